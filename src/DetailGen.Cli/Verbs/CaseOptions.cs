using System.CommandLine;
using System.CommandLine.Parsing;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>The options that point a verb of physics to a stand-alone case file.</summary>
internal sealed record CaseOptions(Option<string?> File, Option<string[]> Only)
{
    internal static CaseOptions AddTo(Command verb)
    {
        var options = new CaseOptions(
            new("--case") { Description = "Case file (JSON): one case, or an object with cases.", HelpName = "FILE" },
            new("--only") { Description = "Answer these cases alone; ids with commas between.", HelpName = "ID[,ID]", DefaultValueFactory = _ => [] });
        verb.Options.Add(options.File);
        verb.Options.Add(options.Only);
        return options;
    }

    internal bool Given(CommandResult parsed) => parsed.GetValue(File) is not null;

    /// <summary>Null where no file was given.</summary>
    internal CaseRequest? Request(ParseResult parsed) => parsed.GetValue(File) is { } file
        ? new(file, [.. parsed.GetValue(Only)!.SelectMany(list => list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))])
        : null;
}
