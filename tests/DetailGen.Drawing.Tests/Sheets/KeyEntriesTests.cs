using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Tests.Fills;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Sheets;

public class KeyEntriesTests
{
    // Both are softwood: a post seen at its end, and a board that lies flat and is cut along its grain.
    private static readonly Section Parapet = SampleParapet.Section();
    private static readonly Part Post = Parapet.Parts.First(part => part.Material.Fill == "sawn-timber" && part.Presence == Presence.Cut) with { Region = Region.Box(0, 0, 100, 100) };
    private static readonly Part Board = Post with { Id = "board", Axis = new(1, 0), Region = Region.Box(200, 0, 600, 25) };

    [Fact]
    public void Timber_cut_in_two_ways_has_two_entries_with_names_and_pictures_of_their_own()
    {
        var entries = Of(Post, Board);
        Assert.Equal([$"{Post.Material.Name} (end grain)", $"{Post.Material.Name} (along the grain)"], entries.Select(entry => entry.Words).Take(2));
        Assert.NotEqual(Drawn(entries[0]), Drawn(entries[1]));
    }

    // The swatch lies otherwise than the part: what it shows hangs on the part alone.
    [Fact]
    public void A_board_that_lies_flat_is_shown_along_its_grain()
    {
        var given = Board with { Material = Board.Material with { Fill = "timber-grain" } };
        Assert.Equal(Drawn(Of(given)[0]), Drawn(Of(Board)[0]));
        Assert.Equal(Post.Material.Name, Of(Board)[0].Words);
    }

    private static IReadOnlyList<KeyEntry> Of(params Part[] parts) => KeyEntries.Of(
        TextSizes.Usual, SectionView.Draw(Parapet with { Parts = parts }, new(5, new(-50, -50, 700, 200))), [], numbers: false, rings: false);

    private static string Drawn(KeyEntry entry) => string.Join('|', entry.Picture.Where(item => item.Row.StartsWith("fill.", StringComparison.Ordinal)).SelectMany(FillerTests.Points).Select(point => FormattableString.Invariant($"{point.X:0.000},{point.Y:0.000}")));
}
