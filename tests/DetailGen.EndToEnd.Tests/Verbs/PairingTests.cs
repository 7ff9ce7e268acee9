using System.Xml.Linq;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class PairingTests
{
    public static TheoryData<string, string, string> Pairings
    {
        get
        {
            var all = new TheoryData<string, string, string>();
            foreach (var junction in new[] { "parapet", "abutment" })
            {
                foreach (var wall in new[] { "cavity-masonry", "solid-masonry-insulated" })
                {
                    foreach (var roof in new[] { "warm-timber-deck", "warm-concrete-deck" })
                    {
                        all.Add(junction, wall, roof);
                    }
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_starter_preset_draws_mirrored_and_not_without_a_failing_check(string junction, string wall, string roof)
    {
        using var scratch = new Scratch();
        var file = Path.Combine(scratch.Folder, "start.yaml");
        Assert.Equal(0, Tool.Run("new", junction, wall, roof, "--out", file).Status);
        var plain = Tool.Run("draw", file, "--out", scratch.Folder, "--formats", "dxf,svg", "--json");
        var mirrored = Tool.Run("draw", file, "--set", "mirror=true", "--out", scratch.Folder, "--formats", "svg", "--json");
        Assert.All([plain, mirrored], drawn => Assert.Equal(0, drawn.Detail["layout"]!["measures"]!["faults"]!.GetValue<int>()));
        Assert.Equal(0, plain.Status);
        Assert.Equal(0, mirrored.Status);
        Assert.DoesNotContain(plain.Detail["checks"]!.AsArray(), check => check!["verdict"]!.GetValue<string>() == "fail");
        Assert.DoesNotContain(plain.Detail["rules"]!.AsArray(), rule => rule!["verdict"]!.GetValue<string>() == "fail");
        Assert.Equal(plain.Detail["parameters"]!.ToJsonString(), mirrored.Detail["parameters"]!.ToJsonString());
        Assert.Equal(plain.Detail["quantities"]!.ToJsonString(), mirrored.Detail["quantities"]!.ToJsonString());
    }

    [Fact]
    public void The_caution_stands_whole_on_a_sheet_without_room_for_the_general_notes()
    {
        using var scratch = new Scratch();
        var file = Path.Combine(scratch.Folder, "start.yaml");
        Assert.Equal(0, Tool.Run("new", "abutment", "cavity-masonry", "warm-timber-deck", "--out", file).Status);
        File.AppendAllText(file, "\nsheet: { paper: A4 }\n");
        Assert.Equal(0, Tool.Run("draw", file, "--out", scratch.Folder, "--formats", "svg").Status);
        var words = string.Join(' ', XDocument.Load(Path.Combine(scratch.Folder, "start.svg")).Descendants().Where(element => !element.HasElements).Select(element => element.Value.Trim()));
        Assert.Contains("the manufacturer's instructions and the project's designers decide.", words, StringComparison.Ordinal);
        Assert.Contains("Work at height: plan edge protection before the roof is opened. General notes: see the further sheets.", words, StringComparison.Ordinal);
    }
}
