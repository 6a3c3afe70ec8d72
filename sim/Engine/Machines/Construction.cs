namespace StarterCtl.Engine.Machines;

/// <summary>What an armature is made of, as far as its constant depends on it.</summary>
/// <param name="Poles">Number of poles, P.</param>
/// <param name="Conductors">Armature conductors, Z.</param>
/// <param name="ParallelPaths">Parallel paths through the armature, A.</param>
/// <param name="FluxPerPoleWebers">Flux of one pole, Wb.</param>
public sealed record Construction(int Poles, int Conductors, int ParallelPaths, double FluxPerPoleWebers);
