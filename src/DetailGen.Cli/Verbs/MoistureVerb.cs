using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Condensation and mould, of details or of stand-alone cases.</summary>
internal static class MoistureVerb
{
    internal static Command Command(Screen screen)
    {
        var verb = Arguments.Verb(
            "moisture",
            "Calculate condensation month by month in the wall and the roof of presets, and the temperature factor needed against mould; or answer a case file.",
            "detailgen moisture presets/details/tern-court-parapet-01.yaml\n  detailgen moisture --case presets/cases/tern-court-cases.json --json");
        var input = PresetsOrCases.AddTo(verb);
        verb.SetAction(parsed =>
        {
            var json = parsed.GetValue(CommandLine.Json);
            return input.Cases(parsed) is { } cases
                ? CaseText.Tell(screen, DetailLibrary.Moisture(cases), json)
                : Answers.Tell(screen, DetailLibrary.Moisture(input.Presets(parsed)), json, MoistureText.Write);
        });
        return verb;
    }
}
