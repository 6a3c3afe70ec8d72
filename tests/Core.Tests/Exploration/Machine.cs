using StarterCtl.Core.Tests.Invariants;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>What is explored: a controller, its last outputs, and the checker that watches both from outside.</summary>
internal class Machine
{
    private readonly InvariantChecker _checker;
    private readonly Readings _readings = new();

    internal Machine(ExploredSet set)
        : this(set, set.Settings())
    {
    }

    /// <param name="set">What is explored; the checker has its settings.</param>
    /// <param name="controllers">Settings of the controller.</param>
    protected Machine(ExploredSet set, Settings controllers)
    {
        Controller = new Controller(controllers);
        _checker = new InvariantChecker(set.Settings());
        Slots = new Slots(new Whole(Controller, Outputs, _checker), [.. Slots.Told, .. set.Told]);
    }

    internal Controller Controller { get; }

    internal Outputs Outputs { get; } = new();

    internal Slots Slots { get; }

    /// <summary>One tick.</summary>
    /// <returns>The invariant that it broke, or null.</returns>
    internal string? Tick(Letter letter)
    {
        letter.Fill(_readings);
        Drive(letter, _readings);
        letter.Fill(_readings);
        return _checker.Violation(letter.ElapsedMicroseconds, _readings, Outputs, Controller.Phase);
    }

    /// <summary>Runs the controller; a broken machine does something about it.</summary>
    protected virtual void Drive(Letter letter, Readings readings) =>
        Controller.Tick(letter.ElapsedMicroseconds, readings, Outputs);

    private sealed class Whole(Controller controller, Outputs outputs, InvariantChecker checker)
    {
        public readonly Controller Controller = controller;
        public readonly Outputs Outputs = outputs;
        public readonly InvariantChecker Checker = checker;
    }
}
