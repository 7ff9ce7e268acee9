using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>Reads a drawing back.</summary>
internal static class InspectVerb
{
    internal static Command Command(Screen screen)
    {
        var file = new Argument<string>("FILE") { Description = "A drawing (DXF, text or binary) that this tool made." };
        var verb = Arguments.Verb("inspect", "Read a drawing back: the sizes that it was made from, and what was edited since.", "detailgen inspect output-samples/TC-DET-0101-P02.dxf");
        verb.Arguments.Add(file);
        verb.SetAction(parsed => InspectText.Tell(screen, DetailLibrary.Inspect(parsed.GetValue(file)!), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
