using System;

namespace StarterCtl.Core.Tests;

/// <summary>How an input fails, and what is read then.</summary>
internal sealed record FailingInput(Input Input, Failure Failure, string Reads, Action<ReactionRig> Fail);
