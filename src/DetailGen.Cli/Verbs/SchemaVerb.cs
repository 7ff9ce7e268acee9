using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>JSON schemas, so that an editor completes and checks presets and packs.</summary>
internal static class SchemaVerb
{
    internal static Command Command(Screen screen)
    {
        var kind = new Argument<string>("KIND") { Description = $"One of {string.Join(", ", DetailLibrary.SchemaKinds)}.", DefaultValueFactory = _ => "preset" };
        var verb = Arguments.Verb("schema", "Print the JSON schema of a kind of file, for editors.", "detailgen schema preset > preset.schema.json");
        verb.Arguments.Add(kind);
        verb.SetAction(parsed => Answers.Tell(screen, DetailLibrary.Schema(parsed.GetValue(kind)!, parsed.GetValue(Arguments.Practice)), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
