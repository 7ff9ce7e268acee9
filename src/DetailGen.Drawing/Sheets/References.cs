using System.Globalization;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>The references that notes and schedule share: W1 … and R1 … of the build-ups, P1 … for every other part with a note, by build order.</summary>
internal static class References
{
    internal static IReadOnlyDictionary<string, string> Of(Section section)
    {
        var all = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var layer in section.Buildups.SelectMany(buildup => buildup.Layers).Where(layer => layer.PartId.Length > 0))
        {
            all[layer.PartId] = layer.Reference;
        }

        var next = 1;
        foreach (var part in section.Parts.Where(part => !part.IsAir && part.Words.Note.Length > 0).OrderBy(part => part.BuildOrder))
        {
            // Parts that carry one note carry one reference.
            var same = section.Parts.FirstOrDefault(other => other.Words.Note == part.Words.Note && all.ContainsKey(other.Id));
            if (!all.ContainsKey(part.Id))
            {
                all[part.Id] = same is null ? "P" + (next++).ToString(CultureInfo.InvariantCulture) : all[same.Id];
            }
        }

        return all;
    }
}
