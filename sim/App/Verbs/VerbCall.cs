using System.CommandLine;
using System.Threading;
using StarterCtl.App.Output;

namespace StarterCtl.App.Verbs;

/// <summary>One call of a verb on a case.</summary>
/// <param name="Terminal">Where results and notes go.</param>
/// <param name="CasePath">The case file.</param>
/// <param name="AsJson">True to print the result as JSON.</param>
/// <param name="Place">Value of --out, or null.</param>
/// <param name="Parsed">Everything that was written, for the verb's own options.</param>
/// <param name="Cancellation">Ctrl-C.</param>
internal sealed record VerbCall(Terminal Terminal, string CasePath, bool AsJson, string? Place, ParseResult Parsed, CancellationToken Cancellation);
