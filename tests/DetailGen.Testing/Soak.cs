using System.Globalization;

namespace DetailGen.Testing;

/// <summary>How many cases a law on random input is tried on: few in the suite, as many as SOAK says in a long run (scripts/soak).</summary>
public static class Soak
{
    public static bool IsAsked => Environment.GetEnvironmentVariable("SOAK") is { Length: > 0 };

    public static int Cases(int inTheSuite) =>
        IsAsked ? int.Parse(Environment.GetEnvironmentVariable("SOAK")!, CultureInfo.InvariantCulture) : inTheSuite;
}
