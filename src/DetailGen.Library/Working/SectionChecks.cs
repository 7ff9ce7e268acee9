using System.Globalization;
using DetailGen.Analysis.Fit;
using DetailGen.Library.Reports;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>Checks on the section, in the words of the report.</summary>
internal static class SectionChecks
{
    internal static IReadOnlyList<CheckReport> Of(Section section)
    {
        var misfits = Tiling.Check(section);
        return misfits.Count == 0
            ? [new("parts-tile", "fit", VerdictWords.Pass, "The cut parts fill the section without overlap and without a gap.", [], null, null)]
            : [.. misfits.Select(misfit => new CheckReport(
                "parts-tile", "fit", VerdictWords.Fail, Words(misfit), misfit.Parts, new(Math.Round(misfit.At.X, 3), Math.Round(misfit.At.Y, 3)), Math.Round(misfit.Width, 3)))];
    }

    private static string Words(Misfit misfit)
    {
        var width = misfit.Width.ToString("0.##", CultureInfo.InvariantCulture);
        return misfit.Overlaps ? $"{string.Join(" and ", misfit.Parts)} overlap by {width} mm." : $"A gap of {width} mm belongs to no part, beside {string.Join(", ", misfit.Parts)}.";
    }
}
