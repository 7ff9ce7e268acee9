using DetailGen.Library.Tests.Laws;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Working;

public class GeneralNotesTests
{
    private static readonly Office Shipped = Office.Of(null).Value;

    [Fact]
    public void Where_it_stands_and_what_it_is_for_is_told_with_the_rules_that_look_at_it() =>
        Assert.EndsWith(" for England, moderate exposure, dwelling, new work, roof access: maintenance.", Checked("uk"), StringComparison.Ordinal);

    [Theory]
    [InlineData("austria")]
    [InlineData("germany")]
    [InlineData("united-states")]
    public void Rules_of_another_country_are_not_said_to_hold_for_a_nation_that_nobody_gave(string pack)
    {
        Assert.StartsWith($"Checked against rules {pack} ", Checked(pack), StringComparison.Ordinal);
        Assert.DoesNotContain("England", Checked(pack), StringComparison.Ordinal);
    }

    [Fact]
    public void A_nation_is_told_as_the_name_it_is() => Assert.Contains(" for Northern Ireland, ", Checked("uk", "site: { nation: northern-ireland }"), StringComparison.Ordinal);

    private static string Checked(string pack, string site = "")
    {
        var words = "";
        Scratch.Folder(folder =>
        {
            var path = Path.Combine(folder, "detail.yaml");
            File.WriteAllText(path, $"detail: any\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nrules: [{pack}]\n{site}\n");
            words = GeneralNotes.Of(DetailWork.Do(PresetFiles.Read(path, [], Shipped).Value, Shipped).Worked!.Solved)[^1];
        });
        return words;
    }
}
