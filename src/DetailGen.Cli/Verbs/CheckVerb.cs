using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Rules and checks, for one preset, several, or a folder of them.</summary>
internal static class CheckVerb
{
    internal static Command Command(Screen screen)
    {
        var paths = Arguments.Presets("Preset files, or a folder whose presets are all checked.");
        var set = Arguments.Set();
        var physics = Arguments.Physics();
        var verb = Arguments.Verb("check", "Solve presets and judge every rule and check, without drawing.", "detailgen check presets/details");
        verb.Arguments.Add(paths);
        verb.Options.Add(set);
        verb.Options.Add(physics);
        verb.SetAction(parsed =>
        {
            var report = DetailLibrary.Check(new(parsed.GetValue(paths)!, parsed.GetValue(set)!, parsed.GetValue(Arguments.Practice)) { Physics = parsed.GetValue(physics) });
            return Answers.Tell(screen, report, parsed.GetValue(CommandLine.Json), report.Details.Count > 1 ? DetailsText.CheckedAmongOthers : DetailsText.Checked);
        });
        return verb;
    }
}
