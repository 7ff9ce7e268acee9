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
        var paths = Arguments.Presets("Preset files, or a folder whose presets are all calculated.");
        paths.Arity = ArgumentArity.ZeroOrMore;
        var set = Arguments.Set();
        verb.Arguments.Add(paths);
        verb.Options.Add(set);
        var cases = CaseOptions.AddTo(verb);
        verb.Validators.Add(value =>
        {
            var presets = value.GetValue(paths) is { Length: > 0 };
            if (presets == cases.Given(value))
            {
                value.AddError(presets ? "Either presets or --case, not both." : "A preset or --case is needed.");
            }
        });
        verb.SetAction(parsed =>
        {
            var json = parsed.GetValue(CommandLine.Json);
            return cases.Request(parsed) is { } request
                ? CaseText.Tell(screen, DetailLibrary.Moisture(request), json)
                : Answers.Tell(screen, DetailLibrary.Moisture(new MoistureRequest(parsed.GetValue(paths)!, parsed.GetValue(set)!, parsed.GetValue(Arguments.Practice))), json, MoistureText.Write);
        });
        return verb;
    }
}
