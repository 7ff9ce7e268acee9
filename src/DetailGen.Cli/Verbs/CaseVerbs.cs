using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;
using DetailGen.Library.Reports;

namespace DetailGen.Cli.Verbs;

/// <summary>Moisture of stand-alone cases.</summary>
internal static class CaseVerbs
{
    internal static Command Moisture(Screen screen) => Command(
        screen, DetailLibrary.Moisture,
        Arguments.Verb(
            "moisture", "Calculate condensation month by month and the temperature factor needed against mould, from a case file.", "detailgen moisture --case my-cases.json --json"));

    private static Command Command(Screen screen, Func<CaseRequest, CaseReport> answer, Command verb)
    {
        var cases = CaseOptions.AddTo(verb);
        cases.File.Required = true;
        verb.SetAction(parsed => CaseText.Tell(screen, answer(cases.Request(parsed)!), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
