using DetailGen.Library.Reports;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>Checks on the section, in the words of the report.</summary>
internal static class SectionChecks
{
    internal static IReadOnlyList<CheckReport> Of(Section section) => section.Parts.Count == 0 ? [] : [];
}
