using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Heat: of presets' junctions, or of stand-alone cases.</summary>
internal static class HeatVerb
{
    internal static Command Command(Screen screen)
    {
        var verb = Arguments.Verb(
            "heat", "Calculate two-dimensional heat flow, Ψ, temperature factor and U-values of presets; or answer a case file and compare with what it expects.",
            "detailgen heat presets/details/tern-court-parapet-01.yaml\n  detailgen heat presets/details/tern-court-parapet-04.yaml --sweep upstand.insulation\n  detailgen heat --case presets/cases/tern-court-cases.json --only flat-roof");
        var paths = Arguments.Presets("Preset files, or a folder whose presets are all calculated.");
        paths.Arity = ArgumentArity.ZeroOrMore;
        var set = Arguments.Set();
        verb.Arguments.Add(paths);
        verb.Options.Add(set);
        var cases = CaseOptions.AddTo(verb);
        var sweep = new Option<string?>("--sweep") { Description = "Go through all that one size of one preset can be, and print Ψ and temperature factor against it as CSV.", HelpName = "KEY" };
        verb.Options.Add(sweep);
        verb.Validators.Add(parsed =>
        {
            if (parsed.GetValue(sweep) is not null && parsed.GetValue(paths) is not { Length: 1 })
            {
                parsed.AddError("--sweep goes through a size of one preset.");
                return;
            }

            var presets = parsed.GetValue(paths) is { Length: > 0 };
            if (presets == cases.Given(parsed))
            {
                parsed.AddError(presets ? "Either presets or --case, not both." : "A preset or --case is needed.");
            }
        });
        verb.SetAction(parsed =>
        {
            var json = parsed.GetValue(CommandLine.Json);
            if (parsed.GetValue(sweep) is { } key)
            {
                return Answers.Tell(screen, DetailLibrary.Sweep(new(parsed.GetValue(paths)![0], parsed.GetValue(set)!, key, parsed.GetValue(Arguments.Practice))), json);
            }

            return cases.Request(parsed) is { } request
                ? CaseText.Tell(screen, DetailLibrary.Heat(request), json)
                : Answers.Tell(screen, DetailLibrary.Heat(new HeatRequest(parsed.GetValue(paths)!, parsed.GetValue(set)!, parsed.GetValue(Arguments.Practice))), json, HeatText.Heated);
        });
        return verb;
    }
}
