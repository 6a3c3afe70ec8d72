namespace StarterCtl.Mutation;

/// <summary>The class that is compiled into the mutated core and says which mutant is active.</summary>
internal static class MutantSwitch
{
    /// <summary>Environment variable with the number of the active mutant; none is active without it.</summary>
    internal const string ActiveVariable = "STARTERCTL_MUTANT";

    /// <summary>Environment variable with the file that receives one byte per mutant, 1 if its place was reached.</summary>
    internal const string ReachedVariable = "STARTERCTL_MUTANTS_REACHED";

    /// <summary>Call that asks for a mutant, up to its number.</summary>
    internal const string Question = "global::StarterCtlMutants.Is(";

    /// <summary>Its source for so many mutants.</summary>
    internal static string Source(int count) => $$"""
        internal static class StarterCtlMutants
        {
            private static readonly int Active = int.Parse("0" + System.Environment.GetEnvironmentVariable("{{ActiveVariable}}"));
            private static readonly string ReachedPath = System.Environment.GetEnvironmentVariable("{{ReachedVariable}}");
            private static readonly byte[] Reached = new byte[{{count + 1}}];

            static StarterCtlMutants()
            {
                if (ReachedPath != null)
                    System.AppDomain.CurrentDomain.ProcessExit += (_, _) => System.IO.File.WriteAllBytes(ReachedPath, Reached);
            }

            internal static bool Is(int number)
            {
                if (ReachedPath != null) Reached[number] = 1;
                return number == Active;
            }
        }
        """;
}
