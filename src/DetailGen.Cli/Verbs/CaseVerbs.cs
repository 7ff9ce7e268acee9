using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Heat of stand-alone cases.</summary>
internal static class CaseVerbs
{
    internal static Command Heat(Screen screen)
    {
        var verb = Arguments.Verb(
            "heat", "Calculate U-values and two-dimensional heat flow from a case file, and compare with what the file expects.", "detailgen heat --case my-cases.json --only flat-roof");
        var cases = CaseOptions.AddTo(verb);
        cases.File.Required = true;
        verb.SetAction(parsed => CaseText.Tell(screen, DetailLibrary.Heat(cases.Request(parsed)!), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
