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
            "detailgen heat presets/details/tern-court-parapet-01.yaml\n  detailgen heat presets/details/tern-court-parapet-04.yaml --sweep upstand.insulation\n  detailgen heat presets/details/tern-court-parapet-04.yaml --surfaces\n  detailgen heat --case presets/cases/tern-court-cases.json --only flat-roof");
        var input = PresetsOrCases.AddTo(verb);
        var sweep = new Option<string?>("--sweep") { Description = "Go through all that one size of one preset can be, and print Ψ and temperature factor against it as CSV.", HelpName = "KEY" };
        verb.Options.Add(sweep);
        var picture = new Option<string?>("--picture") { Description = "With --sweep: draw the curve into this file too; its name ends in .svg, .png or .pdf.", HelpName = "FILE" };
        verb.Options.Add(picture);
        var surfaces = new Option<bool>("--surfaces") { Description = "Print the temperatures along the inside and outside surfaces of one preset's junction as CSV." };
        verb.Options.Add(surfaces);
        verb.Validators.Add(parsed =>
        {
            if (parsed.IsGiven(surfaces) && parsed.Count(input.Paths) != 1)
            {
                parsed.AddError("--surfaces tells those of one preset.");
            }

            if (parsed.IsGiven(surfaces) && parsed.IsGiven(sweep))
            {
                parsed.AddError("Either --sweep or --surfaces, not both.");
            }

            if (parsed.IsGiven(sweep) && parsed.Count(input.Paths) != 1)
            {
                parsed.AddError("--sweep goes through a size of one preset.");
            }

            if (parsed.IsGiven(picture) && !parsed.IsGiven(sweep))
            {
                parsed.AddError("--picture draws the curve of --sweep.");
            }
        });
        verb.SetAction(parsed =>
        {
            var json = parsed.GetValue(CommandLine.Json);
            var presets = input.Presets(parsed);
            if (parsed.GetValue(sweep) is { } key)
            {
                return Answers.Tell(screen, DetailLibrary.Sweep(new(presets.Paths[0], presets.Overrides, key, presets.Practice, parsed.GetValue(picture))), json);
            }

            if (parsed.GetValue(surfaces))
            {
                return Answers.Tell(screen, DetailLibrary.Surfaces(new(presets.Paths[0], presets.Overrides, presets.Practice)), json);
            }

            return input.Cases(parsed) is { } cases
                ? CaseText.Tell(screen, DetailLibrary.Heat(cases), json)
                : Answers.Tell(screen, DetailLibrary.Heat(presets), json, HeatText.Heated);
        });
        return verb;
    }
}
