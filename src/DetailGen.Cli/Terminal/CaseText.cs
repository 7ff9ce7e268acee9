using DetailGen.Library.Reports;

namespace DetailGen.Cli.Terminal;

/// <summary>Answers to case files: the document alone, or a few lines for each case.</summary>
internal static class CaseText
{
    private const string Caution = "Design figures for a competent person to judge. Condensation so calculated leaves out air leakage, rain and moisture held in materials.";

    /// <summary>By kind of case. Recalled; the clauses are still to be read.</summary>
    private static readonly (string Kind, string Standard)[] Standards =
    [
        ("heat2d", "ISO 10211:2017 (two-dimensional heat flow)"), ("u-value", "ISO 6946:2017 (U-values)"), ("moisture", "ISO 13788:2012 (condensation, mould)"),
    ];

    internal static int Tell(Screen screen, CaseReport report, bool json)
    {
        if (report.Errors.Count > 0)
        {
            return Answers.Refuse(screen, json, report.Errors, report.Status);
        }

        if (json)
        {
            screen.Output.Write(report.Json);
        }

        foreach (var answered in report.Cases)
        {
            foreach (var line in answered.Warnings.Concat(answered.FailedChecks))
            {
                screen.Messages.WriteLine($"{answered.Id}: {line}");
            }

            if (!json)
            {
                Write(screen.Output, answered);
            }
        }

        if (!json)
        {
            var standards = Standards.Where(one => report.Cases.Any(answered => answered.Kind == one.Kind)).Select(one => one.Standard);
            screen.Output.WriteLine($"{string.Join(", ", standards)}; from memory, clause numbers still to be read. Materials, temperatures and films are those of the file.");
            screen.Output.WriteLine(Caution);
        }

        return report.Status;
    }

    private static void Write(TextWriter output, AnsweredCaseReport answered)
    {
        output.WriteLine(answered.Title.Length > 0 ? $"{answered.Id}: {answered.Title}" : answered.Id);
        foreach (var (name, text) in answered.Figures)
        {
            output.WriteLine($"  {name}: {text}");
        }

        if (answered.Checks > 0)
        {
            output.WriteLine($"  checks of the file: {answered.Checks - answered.FailedChecks.Count} of {answered.Checks} hold");
        }

        output.WriteLine();
    }
}
