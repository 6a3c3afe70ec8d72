using System;
using System.Threading.Tasks;

namespace StarterCtl.App.Verbs;

/// <summary>Runs a verb so that Ctrl-C reaches it.</summary>
internal static class Verb
{
    /// <summary>Runs the work beside the thread that waits for the signal.</summary>
    public static Task<int> Run(Func<int> work) => Task.Run(work);
}
