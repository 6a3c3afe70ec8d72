using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Linq;
using System.Threading.Tasks;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>Every state that a machine can come to by any sequence of letters, breadth first, until there is no new one.</summary>
internal sealed class Explorer
{
    private readonly List<Letter> _letters;
    private readonly string? _wanted;
    private readonly HashSet<int[]> _known = new(new SameNumbers());
    private readonly List<int> _parents = [-1];
    private readonly List<int> _letterOf = [-1];
    private readonly Worker[] _workers;

    /// <param name="build">Makes the machine that is explored, once per processor.</param>
    /// <param name="letters">The alphabet.</param>
    /// <param name="wanted">Stops as soon as this invariant is broken; null: goes to the end.</param>
    internal Explorer(Func<Machine> build, List<Letter> letters, string? wanted = null)
    {
        _letters = letters;
        _wanted = wanted;
        _workers = [.. Enumerable.Range(0, Math.Min(Environment.ProcessorCount, 4)).Select(_ => new Worker(this, build()))];
        int[] first = new int[_workers[0].Machine.Slots.Count];
        _workers[0].Machine.Slots.Save(first);
        States.Add(first);
        _known.Add(first);
    }

    internal List<int[]> States { get; } = [];

    internal long Edges => (long)Expanded * _letters.Count;

    internal int Expanded { get; private set; }

    internal int Depth { get; private set; }

    internal TimeSpan Took { get; private set; }

    /// <summary>Which phase led to which, in words.</summary>
    internal SortedSet<string> Ways { get; } = new(StringComparer.Ordinal);

    /// <summary>The invariants that were broken, each with a shortest way to it.</summary>
    internal Dictionary<string, string> Broken { get; } = [];

    internal Explorer Run()
    {
        Stopwatch watch = Stopwatch.StartNew();
        while (Expanded < States.Count && !(_wanted != null && Broken.ContainsKey(_wanted)))
        {
            int from = Expanded;
            int count = States.Count - from;
            int share = (count + _workers.Length - 1) / _workers.Length;
            Parallel.For(0, _workers.Length, i => _workers[i].Expand(from + Math.Min(i * share, count), from + Math.Min((i + 1) * share, count)));
            Expanded = States.Count;
            Depth++;
            foreach (Worker worker in _workers) Merge(worker);
        }

        Took = watch.Elapsed;
        return this;
    }

    /// <summary>True if a state was found.</summary>
    internal bool Knows(int[] state) => _known.Contains(state);

    /// <summary>Does something with every state found, on every processor.</summary>
    internal void ForEach(Func<Machine> build, Action<Machine, int[]> look)
    {
        int share = (States.Count + _workers.Length - 1) / _workers.Length;
        Parallel.For(0, _workers.Length, i =>
        {
            Machine machine = build();
            for (int state = i * share; state < Math.Min((i + 1) * share, States.Count); state++) look(machine, States[state]);
        });
    }

    /// <summary>The letters that led to a state first, a line each.</summary>
    internal string Way(int[] state) => Way(States.IndexOf(state));

    // In the order of the shares, and so in the same order however many processors there are.
    private void Merge(Worker worker)
    {
        foreach ((int[] key, int parent, int letter) in worker.Found)
        {
            if (!_known.Add(key)) continue;
            States.Add(key);
            _parents.Add(parent);
            _letterOf.Add(letter);
        }

        foreach ((string rule, (int state, int letter)) in worker.Broken) Broken.TryAdd(rule, $"{Way(state)}\n{_letters[letter]}");
        foreach ((Phase before, Phase after) in worker.Ways) Ways.Add($"{before} to {after}");
        worker.Found.Clear();
        worker.Broken.Clear();
        worker.Fresh.Clear();
    }

    private string Way(int state)
    {
        List<string> lines = [];
        for (int at = state; _parents[at] >= 0; at = _parents[at]) lines.Add(_letters[_letterOf[at]].ToString());
        lines.Reverse();
        return string.Join('\n', lines);
    }

    private sealed class Worker(Explorer explorer, Machine machine)
    {
        internal readonly Machine Machine = machine;
        internal readonly List<(int[] Key, int Parent, int Letter)> Found = [];
        internal readonly HashSet<int[]> Fresh = new(new SameNumbers());
        internal readonly HashSet<(Phase Before, Phase After)> Ways = [];
        internal readonly Dictionary<string, (int State, int Letter)> Broken = [];

        internal void Expand(int from, int to)
        {
            int[] key = new int[Machine.Slots.Count];
            for (int state = from; state < to; state++)
            {
                for (int letter = 0; letter < explorer._letters.Count; letter++)
                {
                    Machine.Slots.Load(explorer.States[state]);
                    Phase before = Machine.Controller.Phase;
                    string? broken = Machine.Tick(explorer._letters[letter]);
                    if (broken != null)
                    {
                        // What comes behind a broken invariant says nothing.
                        Broken.TryAdd(broken, (state, letter));
                        continue;
                    }

                    Phase after = Machine.Controller.Phase;
                    if (after != before) Ways.Add((before, after));
                    Machine.Slots.Save(key);
                    if (explorer._known.Contains(key) || Fresh.Contains(key)) continue;
                    int[] copy = (int[])key.Clone();
                    Fresh.Add(copy);
                    Found.Add((copy, state, letter));
                }
            }
        }
    }

    private sealed class SameNumbers : IEqualityComparer<int[]>
    {
        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(int[] obj)
        {
            uint hash = 2166136261;
            foreach (int number in obj) hash = (hash ^ (uint)number ^ ((uint)number >> 16)) * 16777619;
            return (int)hash;
        }
    }
}
