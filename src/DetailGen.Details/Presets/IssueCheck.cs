using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>Whether revision and status of a title block go together.</summary>
/// <remarks>UK national annex to ISO 19650-2, editions 2018 and 2021: P goes with S codes, C with A and B codes, a working suffix with S0 only (from memory).</remarks>
internal static class IssueCheck
{
    public static void Check(TitleBlock block, SheetWishes sheet, List<Diagnostic> faults, List<Diagnostic> warnings)
    {
        if (block.Fields.FirstOrDefault(field => field.Key == "status") is not { Text.Length: > 0 } status)
        {
            return;
        }

        var edition = sheet.Options.FirstOrDefault(option => option.Key == "status-edition")?.Value ?? "2021";
        var withdrawn = edition == "2018" ? status.Text == "S5" : status.Text is "S6" or "S7" or "CR";
        if (withdrawn)
        {
            warnings.Add(Messages.WithdrawnStatus(status.At, status.Text, edition));
        }

        // what is neither is told with its form
        if (block.Fields.FirstOrDefault(field => field.Key == "revision") is not { Text: ['P' or 'C', ..] } revision || status.Text[0] is not ('S' or 'A' or 'B' or 'C'))
        {
            return;
        }

        if (revision.Text[0] == 'P' != (status.Text[0] == 'S'))
        {
            faults.Add(Messages.RevisionAndStatus(revision.At, revision.Text, status.Text));
        }
        else if (revision.Text.Contains('.', StringComparison.Ordinal) && status.Text != "S0")
        {
            faults.Add(Messages.WorkingVersion(revision.At, revision.Text, status.Text));
        }
    }
}
