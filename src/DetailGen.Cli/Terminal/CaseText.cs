using DetailGen.Library.Reports;

namespace DetailGen.Cli.Terminal;

/// <summary>Answers to case files: the document alone, or a few lines for each case.</summary>
internal static class CaseText
{
    private const string Caution = "Design figures for a competent person to judge. Condensation so calculated leaves out air leakage, rain and moisture held in materials.";

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
