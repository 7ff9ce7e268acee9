using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>A commented preset to start from.</summary>
internal static class NewVerb
{
    internal static Command Command(Screen screen)
    {
        var junction = new Argument<string>("JUNCTION") { Description = "Such as parapet; see detailgen list junctions." };
        var wall = new Argument<string>("WALL") { Description = "Such as cavity-masonry; see detailgen list walls." };
        var roof = new Argument<string>("ROOF") { Description = "Such as warm-timber-deck; see detailgen list roofs." };
        var file = new Option<string?>("--out") { Description = "File to write; left out, the preset goes to standard output. A file that exists is not overwritten.", HelpName = "FILE" };
        var verb = Arguments.Verb("new", "Write a commented preset to start from.", "detailgen new parapet cavity-masonry warm-timber-deck --out my-parapet.yaml");
        verb.Arguments.Add(junction);
        verb.Arguments.Add(wall);
        verb.Arguments.Add(roof);
        verb.Options.Add(file);
        verb.SetAction(parsed => Answers.Tell(
            screen, DetailLibrary.New(new(parsed.GetValue(junction)!, parsed.GetValue(wall)!, parsed.GetValue(roof)!, parsed.GetValue(file), parsed.GetValue(Arguments.Practice))), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
