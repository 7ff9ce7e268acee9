using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Cases;

/// <summary>The door from case files to the two-dimensional engine.</summary>
internal static class FieldCases
{
    /// <summary>Solves a case, or says what is wrong with its geometry.</summary>
    internal static FieldOutcome Solve(FieldCase asked) => FieldEngine.Solve(asked);
}
