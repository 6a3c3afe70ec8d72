using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;
using StarterCtl.House;

namespace StarterCtl.Board.Tests;

/// <summary>
/// How deep calls go in the board's build of core, firmware and program, and how many slots their locals and stacks take: the worst
/// way through, whether or not it can happen. A call of a seam goes to every class behind it; one that passes such a call on, as a board
/// around a board does, stands on a way once.
/// </summary>
internal sealed class CallDepth
{
    private static readonly string[] Built = ["StarterCtl.Core.dll", "StarterCtl.Firmware.dll", "StarterCtl.Board.exe"];

    private readonly Dictionary<string, MethodDefinition> _methods;
    private readonly ILookup<string, MethodDefinition> _behindSeams;
    private readonly Dictionary<MethodDefinition, (int Calls, int Slots)> _known = [];
    private readonly Stack<MethodDefinition> _way = new();
    private int _passedOver;

    public CallDepth()
    {
        string folder = Path.Combine(Repository.Root, "firmware", "board", "bin", Repository.Configuration, "netnano1.0");
        List<TypeDefinition> types = [.. Built.SelectMany(name => ModuleDefinition.ReadModule(Path.Combine(folder, name)).GetTypes())
            .Where(type => type.FullName.StartsWith("StarterCtl.", StringComparison.Ordinal))];
        _methods = types.SelectMany(type => type.Methods).ToDictionary(method => method.FullName);
        _behindSeams = types.SelectMany(type => type.Interfaces, (type, seam) => (Type: type, Seam: seam.InterfaceType.FullName))
            .SelectMany(pair => pair.Type.Methods, (pair, method) => (Key: $"{pair.Seam}.{method.Name}/{method.Parameters.Count}", Method: method))
            .ToLookup(pair => pair.Key, pair => pair.Method);
    }

    /// <summary>Calls below and including a method, and the slots of all of them together.</summary>
    /// <exception cref="InvalidOperationException">A method calls itself in the end.</exception>
    public (int Calls, int Slots) Of(string fullName) => Of(_methods[fullName]);

    private (int Calls, int Slots) Of(MethodDefinition method)
    {
        if (_known.TryGetValue(method, out (int Calls, int Slots) known)) return known;
        if (_way.Contains(method)) throw new InvalidOperationException($"{method.FullName} calls itself by way of {string.Join(", ", _way.Select(called => called.Name))}");
        int passedOver = _passedOver;
        _way.Push(method);
        List<(int Calls, int Slots)> below = [(0, 0), .. Called(method).Select(Of)];
        _way.Pop();
        int own = method.HasBody ? method.Body.Variables.Count + method.Body.MaxStackSize : 0;
        (int Calls, int Slots) depth = (below.Max(called => called.Calls) + 1, below.Max(called => called.Slots) + own);
        // What was passed over because of where the way came from may count on another way.
        if (passedOver == _passedOver) _known[method] = depth;
        return depth;
    }

    private IEnumerable<MethodDefinition> Called(MethodDefinition method)
    {
        if (!method.HasBody) return [];
        return method.Body.Instructions.Where(instruction => instruction.OpCode.Code is Code.Call or Code.Callvirt or Code.Newobj)
            .SelectMany(instruction => Targets((MethodReference)instruction.Operand)).Distinct();
    }

    private List<MethodDefinition> Targets(MethodReference reference)
    {
        if (_methods.TryGetValue(reference.FullName, out MethodDefinition? called) && called.HasBody) return [called];
        List<MethodDefinition> behind = [.. _behindSeams[$"{reference.DeclaringType.FullName}.{reference.Name}/{reference.Parameters.Count}"]];
        _passedOver += behind.RemoveAll(_way.Contains);
        return behind;
    }
}
