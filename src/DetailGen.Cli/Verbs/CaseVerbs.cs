using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;
using DetailGen.Library.Reports;

namespace DetailGen.Cli.Verbs;

/// <summary>Heat and moisture of stand-alone cases.</summary>
internal static class CaseVerbs
{
    internal static Command Heat(Screen screen) => Command(
        screen, DetailLibrary.Heat,
        Arguments.Verb("heat", "Calculate U-values and two-dimensional heat flow from a case file, and compare with what the file expects.", "detailgen heat --case my-cases.json --only flat-roof"));

    private static Command Command(Screen screen, Func<CaseRequest, CaseReport> answer, Command verb)
    {
        var options = Options(verb);
        options.File.Required = true;
        verb.SetAction(parsed => Answer(screen, answer, parsed, parsed.GetValue(options.File)!, options));
        return verb;
    }

    /// <summary>Adds the options of a verb that answers case files.</summary>
    internal static CaseOptions Options(Command verb)
    {
        var file = new Option<string?>("--case") { Description = "Case file (JSON): one case, or an object with cases.", HelpName = "FILE" };
        var only = new Option<string[]>("--only")
        {
            Description = "Answer these cases alone; ids with commas between.",
            HelpName = "ID[,ID]",
            DefaultValueFactory = _ => [],
        };
        verb.Options.Add(file);
        verb.Options.Add(only);
        return new(file, only);
    }

    internal static int Answer(Screen screen, Func<CaseRequest, CaseReport> answer, ParseResult parsed, string file, CaseOptions options)
    {
        string[] ids = [.. parsed.GetValue(options.Only)!.SelectMany(list => list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
        return CaseText.Tell(screen, answer(new(file, ids)), parsed.GetValue(CommandLine.Json));
    }
}

/// <param name="File">Case file.</param>
/// <param name="Only">Ids of the cases to answer.</param>
internal sealed record CaseOptions(Option<string?> File, Option<string[]> Only);
