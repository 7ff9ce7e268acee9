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

    internal static Command Moisture(Screen screen) => Command(
        screen, DetailLibrary.Moisture,
        Arguments.Verb(
            "moisture", "Calculate condensation month by month and the temperature factor needed against mould, from a case file.", "detailgen moisture --case my-cases.json --json"));

    private static Command Command(Screen screen, Func<CaseRequest, CaseReport> answer, Command verb)
    {
        var file = new Option<string>("--case") { Description = "Case file (JSON): one case, or an object with cases.", HelpName = "FILE", Required = true };
        var only = new Option<string[]>("--only")
        {
            Description = "Answer these cases alone; ids with commas between.",
            HelpName = "ID[,ID]",
            DefaultValueFactory = _ => [],
        };
        verb.Options.Add(file);
        verb.Options.Add(only);
        verb.SetAction(parsed =>
        {
            string[] ids = [.. parsed.GetValue(only)!.SelectMany(list => list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
            return CaseText.Tell(screen, answer(new(parsed.GetValue(file)!, ids)), parsed.GetValue(CommandLine.Json));
        });
        return verb;
    }
}
