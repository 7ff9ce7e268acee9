using System.CommandLine;
using System.CommandLine.Parsing;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>What is wrong with a command line, in our own words; each once.</summary>
internal static class Faults
{
    internal static IEnumerable<string> Of(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        // after a verb that is none nothing that follows can be judged
        return parsed.UnmatchedTokens.Take(command is RootCommand ? 1 : int.MaxValue).Select(token => Unmatched(token, command))
            .Concat(parsed.Errors.Where(error => !IsOfUnmatched(error, parsed)).Select(error => Reason(error, command))).Distinct(StringComparer.Ordinal);
    }

    internal static string NoOption(string token, Command command) => $"There is no option {token}.{Meant(token, command.Options.Select(option => option.Name))}";

    /// <param name="next">What stands where the value should.</param>
    internal static string NoValue(Option option, string next) => $"{option.Name} needs a value, and the option {next} follows it.";

    private static string Unmatched(string token, Command command) =>
        token.StartsWith('-') ? NoOption(token, command)
        : command is RootCommand ? $"There is no verb {token}.{Meant(token, command.Subcommands.Select(verb => verb.Name))}"
        : $"{command.Name} can make nothing of {token}.";

    private static string Meant(string token, IEnumerable<string> known) => DetailLibrary.Nearest(token, [.. known]) is { } nearest ? $" Did you mean {nearest}?" : "";

    private static bool IsOfUnmatched(ParseError error, ParseResult parsed) =>
        error.SymbolResult is CommandResult && parsed.UnmatchedTokens.Count > 0;

    private static string Reason(ParseError error, Command command) => error.SymbolResult switch
    {
        ArgumentResult { Tokens.Count: 0 } argument when argument.Parent is CommandResult => $"{command.Name} needs {argument.Argument.Name}: {argument.Argument.Description}",
        OptionResult { Tokens.Count: 0 } option => $"{option.Option.Name} needs a value: {option.Option.Description}",
        CommandResult result when command.Options.FirstOrDefault(option => option.Required && result.GetResult(option) is null) is { } asked => $"{command.Name} needs {asked.Name}: {asked.Description}",
        CommandResult result when command.Arguments.FirstOrDefault(argument => argument.Arity.MinimumNumberOfValues > 0 && result.Count(argument) == 0) is { } missing => $"{command.Name} needs {missing.Name}: {missing.Description}",
        _ => error.Message,
    };
}
