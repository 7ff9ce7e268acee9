using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Signs of shape for verdicts: tick, cross, triangle, square, dash; they read in black print and to every eye.</summary>
internal static class VerdictSign
{
    /// <param name="at">Lower left corner of the sign, on the base line of the words.</param>
    internal static IEnumerable<Item> Of(TextSizes sizes, string row, Verdict verdict, PaperPoint at)
    {
        var size = sizes.ByNotes(2.2);
        PaperPoint At(double u, double v) => new(at.X + u * size, at.Y + v * size);
        return verdict switch
        {
            Verdict.Pass => [new Stroke(row, [At(0, 0.45), At(0.35, 0.05), At(1, 1)])],
            Verdict.Fail => [new Stroke(row, [At(0, 0), At(1, 1)]), new Stroke(row, [At(0, 1), At(1, 0)])],
            Verdict.Warn or Verdict.ToConfirm => [new Stroke(row, [At(0, 0), At(1, 0), At(0.5, 0.9)], Closed: true)],
            Verdict.Waived => [new Stroke(row, [At(0.1, 0.1), At(0.9, 0.1), At(0.9, 0.9), At(0.1, 0.9)], Closed: true)],
            _ => [new Stroke(row, [At(0, 0.45), At(1, 0.45)])],
        };
    }

    internal static string Words(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "pass",
        Verdict.Fail => "fail",
        Verdict.Warn => "warn",
        Verdict.Waived => "waived",
        Verdict.ToConfirm => "to confirm",
        _ => "not applicable",
    };
}
