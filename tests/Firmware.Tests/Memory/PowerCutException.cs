using System;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>The power went, and with it everything that was not in the memory.</summary>
internal sealed class PowerCutException : Exception;
