using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Why a value, what a rule is for, what a part does.</summary>
internal static class ExplainVerb
{
    internal static Command Command(Screen screen)
    {
        var preset = Arguments.Preset();
        var subject = new Argument<string?>("SUBJECT") { Description = "A parameter key, a rule id, a part id, a value, a target, a slot, or a name in square brackets in a conflict or a range; left out, every value is explained.", Arity = ArgumentArity.ZeroOrOne };
        var set = Arguments.Set();
        var whatIf = Arguments.Set("--what-if", "Say what would change if this were set, before anything is drawn: sizes, verdicts, or what clashes; may be repeated.");
        var verb = Arguments.Verb(
            "explain", "Say why a value is what it is, what a rule is for, or what a part does; and what a change would bring.",
            "detailgen explain presets/details/tern-court-parapet-01.yaml upstand.height\n  detailgen explain presets/details/tern-court-parapet-01.yaml --what-if roof.insulation=120mm");
        verb.Arguments.Add(preset);
        verb.Arguments.Add(subject);
        verb.Options.Add(set);
        verb.Options.Add(whatIf);
        verb.SetAction(parsed => Answers.Tell(
            screen, DetailLibrary.Explain(new(parsed.GetValue(preset)!, parsed.GetValue(set)!, parsed.GetValue(subject), parsed.GetValue(Arguments.Practice))
            {
                WhatIf = parsed.GetValue(whatIf)!,
            }), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
