using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>What there is: rules, materials, parameters and so on.</summary>
internal static class ListVerb
{
    internal static Command Command(Screen screen)
    {
        var topic = new Argument<string>("TOPIC") { Description = $"One of {string.Join(", ", DetailLibrary.Topics)}." };
        var verb = Arguments.Verb("list", "List what there is.", "detailgen list materials");
        verb.Arguments.Add(topic);
        verb.SetAction(parsed => Answers.Tell(screen, DetailLibrary.List(parsed.GetValue(topic)!, parsed.GetValue(Arguments.Practice)), parsed.GetValue(CommandLine.Json)));
        return verb;
    }
}
