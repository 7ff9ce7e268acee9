using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>What each value can be, and what stops it.</summary>
internal static class RangeVerb
{
    internal static Command Command(Screen screen)
    {
        var preset = Arguments.Preset();
        var keys = new Argument<string[]>("KEY") { Description = "Parameter keys; left out, every value that is not set. A key that is set is answered as if it were not.", Arity = ArgumentArity.ZeroOrMore };
        var set = Arguments.Set();
        var verb = Arguments.Verb(
            "range", "Say what each value can be while the rest stands, and what stops it at either end.", "detailgen range presets/details/tern-court-parapet-01.yaml upstand.height wall.cavity");
        verb.Arguments.Add(preset);
        verb.Arguments.Add(keys);
        verb.Options.Add(set);
        verb.SetAction(parsed => Answers.Tell(
            screen, DetailLibrary.Range(new(parsed.GetValue(preset)!, parsed.GetValue(set)!, parsed.GetValue(keys)!, parsed.GetValue(Arguments.Practice))),
            parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
