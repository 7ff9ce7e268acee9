namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Wishes that cannot be had, waivers that set nothing aside, and falls in words.</summary>
public class WishesAndWaiversTests
{
    private static Tool Check(Scratch scratch, string more) => Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", more), "--json");

    private static string Verdict(Tool run, string rule) => run.Detail["rules"]!.AsArray().Single(one => one!["id"]!.GetValue<string>() == rule)!["verdict"]!.GetValue<string>();

    private static List<string> Warnings(Tool run, string start) =>
        [.. run.Detail["warnings"]!.AsArray().Select(one => one!.GetValue<string>()).Where(one => one.StartsWith(start, StringComparison.Ordinal))];

    [Theory]
    [InlineData("coping.overhang", "75mm")]
    [InlineData("coping.fall-to", "both")]
    public void What_the_command_line_fixes_is_told_as_such_be_it_a_size_or_a_choice(string key, string value)
    {
        var text = Tool.Run("explain", Tool.Shipped("tern-court-parapet-01"), key, "--set", $"{key}={value}", "--json").Json["explained"]![0]!["text"]!.AsArray();
        Assert.Contains("Fixed on the command line.", text.Select(line => line!.GetValue<string>()));
    }

    [Fact]
    public void A_wish_that_was_not_met_is_told_once_with_what_came_instead_and_why()
    {
        using var scratch = new Scratch();
        var run = Check(scratch, "prefer: { upstand.height: 100 mm, wall.cavity: 100 mm }");
        Assert.Equal(0, run.Status);
        var warning = Assert.Single(Warnings(run, "prefer "));
        var height = run.Detail["parameters"]!["upstand.height"]!;
        Assert.Equal($"prefer upstand.height: wished for 100 mm, got {height["text"]!.GetValue<string>()}. {height["why"]!["text"]!.GetValue<string>()}", warning);
    }

    [Fact]
    public void A_waiver_of_a_rule_that_is_kept_leaves_a_pass_and_a_warning()
    {
        using var scratch = new Scratch();
        var run = Check(scratch, "set: { upstand.height: 200 mm }\nwaive: { upstand-min: { reason: agreed } }");
        Assert.Equal("pass", Verdict(run, "upstand-min"));
        Assert.Contains("not needed", Assert.Single(Warnings(run, "waive upstand-min")), StringComparison.Ordinal);
        run = Check(scratch, "set: { upstand.height: 100 mm }\nwaive: { upstand-min: { reason: agreed } }");
        Assert.Equal("waived", Verdict(run, "upstand-min"));
        Assert.Empty(Warnings(run, "waive "));
    }

    [Fact]
    public void A_rule_waived_under_two_of_its_names_is_told()
    {
        using var scratch = new Scratch();
        var run = Check(scratch, "waive:\n  upstand-min: { reason: agreed }\n  upstand-datum-top: { reason: agreed otherwise }");
        Assert.Equal(2, run.Status);
        Assert.Contains("The rule upstand-min is waived twice; as upstand-min on line 6 already.", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Explain_says_why_a_rule_is_waived_and_by_whom()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("explain", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { upstand.height: 100 mm }\nwaive: { upstand-min: { reason: Low wall, by: architect, reference: TC-L-9 } }"), "upstand-min");
        Assert.Contains("waived, 100 mm against at least 150 mm.", run.Output, StringComparison.Ordinal);
        Assert.Contains("waived by architect, Low wall (TC-L-9).", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_of_a_rule_that_does_not_apply_is_warned_of()
    {
        using var scratch = new Scratch();
        var away = Check(scratch, "").Detail["rules"]!.AsArray().First(one => one!["verdict"]!.GetValue<string>() == "not-applicable")!["id"]!.GetValue<string>();
        Assert.Contains("does not apply", Assert.Single(Warnings(Check(scratch, $"waive: {{ {away}: {{ reason: agreed }} }}"), $"waive {away}")), StringComparison.Ordinal);
    }

    [Fact]
    public void Falls_and_angles_are_told_in_words_in_warnings_and_reports()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { roof.fall: 1:60 }");
        var run = Tool.Run("draw", preset, "--out", scratch.Folder, "--formats", "md");
        var report = File.ReadAllText(Path.Combine(scratch.Folder, "preset.md"));
        foreach (var text in (string[])[run.Messages, run.Output, report, Tool.Run("check", preset).Output])
        {
            Assert.DoesNotContain("1:n", text, StringComparison.Ordinal);
            Assert.DoesNotContain(">=", text, StringComparison.Ordinal);
            Assert.DoesNotContain("<=", text, StringComparison.Ordinal);
        }

        Assert.Contains(" or steeper", report, StringComparison.Ordinal);
        Assert.Contains("The roof fall must be 1:80 or steeper", Tool.Run("check", preset, "--set", "roof.fall=1:100").Output, StringComparison.Ordinal);
        Assert.Contains("| 1:60 | ", report, StringComparison.Ordinal);
    }
}
