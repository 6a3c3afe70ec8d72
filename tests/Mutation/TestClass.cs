using System.Collections.Generic;

namespace StarterCtl.Mutation;

/// <summary>One class of tests as it ran without a mutant.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Passes">False when a test failed twice in a row.</param>
/// <param name="Seconds">Processor time that its process took.</param>
/// <param name="Reached">One byte per mutant by number, 1 where it comes by.</param>
internal sealed record TestClass(string Name, bool Passes, double Seconds, IReadOnlyList<byte> Reached);
