using System.CommandLine;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>What a verb of physics calculates: presets, or the cases of a stand-alone file.</summary>
internal sealed record PresetsOrCases(Argument<string[]> Paths, Option<string[]> Set, Option<string?> File, Option<string[]> Only)
{
    internal static PresetsOrCases AddTo(Command verb)
    {
        var input = new PresetsOrCases(
            Arguments.Presets("Preset files, or a folder whose presets are all calculated."),
            Arguments.Set(),
            new("--case") { Description = "Case file (JSON): one case, or an object with cases.", HelpName = "FILE" },
            new("--only") { Description = "Answer these cases alone; ids with commas between.", HelpName = "ID[,ID]", DefaultValueFactory = _ => [] });
        input.Paths.Arity = ArgumentArity.ZeroOrMore;
        verb.Arguments.Add(input.Paths);
        verb.Options.Add(input.Set);
        verb.Options.Add(input.File);
        verb.Options.Add(input.Only);
        verb.Validators.Add(parsed =>
        {
            var presets = parsed.Count(input.Paths) > 0;
            if (presets == parsed.IsGiven(input.File))
            {
                parsed.AddError(presets ? "Either presets or --case, not both." : "A preset or --case is needed.");
            }

            if (parsed.IsGiven(input.Only) && !parsed.IsGiven(input.File))
            {
                parsed.AddError("--only picks cases of a file that --case names.");
            }

            if (parsed.IsGiven(input.Set) && parsed.IsGiven(input.File))
            {
                parsed.AddError("--set is for presets; a case file holds its own values.");
            }
        });
        return input;
    }

    /// <summary>Null where presets were given.</summary>
    internal CaseRequest? Cases(ParseResult parsed) => parsed.GetValue(File) is { } file
        ? new(file, [.. parsed.GetValue(Only)!.SelectMany(list => list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))])
        : null;

    internal PresetsRequest Presets(ParseResult parsed) => new(parsed.GetValue(Paths)!, parsed.GetValue(Set)!, parsed.GetValue(Arguments.Practice));
}
