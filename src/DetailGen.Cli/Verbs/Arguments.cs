using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace DetailGen.Cli.Verbs;

/// <summary>Arguments that several verbs share.</summary>
internal static class Arguments
{
    internal static Argument<string[]> Presets(string description)
    {
        var presets = new Argument<string[]>("PRESET") { Description = description, Arity = ArgumentArity.OneOrMore };
        presets.Validators.Add(value =>
        {
            // An option that does not exist would else be taken for a file.
            foreach (var token in value.Tokens.Where(token => token.Value.StartsWith("--", StringComparison.Ordinal)))
            {
                value.AddError(value.Parent is CommandResult { Command: var command } ? Faults.NoOption(token.Value, command) : $"There is no option {token.Value}.");
            }
        });
        return presets;
    }

    internal static Argument<string> Preset() => new("PRESET") { Description = "Preset file (YAML)." };

    internal static Option<string?> Practice { get; } = new("--practice")
    {
        Description = "Folder with a practice's own materials, stock, rules, constructions and sheets, laid over what ships.",
        HelpName = "DIR",
    };

    internal static Option<string[]> Set(string name = "--set", string description = "Fix a value, over what the preset says; may be repeated.") => new(name)
    {
        Description = description,
        HelpName = "KEY=VALUE",
        AllowMultipleArgumentsPerToken = false,
        DefaultValueFactory = _ => [],
    };

    internal static Option<bool> Physics() => new("--physics")
    {
        Description = "Simulate the heat through the junction too, as heat does, and judge by it; some seconds for each preset. A target on it, or the thermal sheet, asks for it anyway.",
    };

    /// <summary>An option that takes a whole number; anything else is told in one line.</summary>
    internal static Option<int> WholeNumber(string name, string description, int least, int most, int usual) => new(name)
    {
        Description = description,
        HelpName = "NUMBER",
        DefaultValueFactory = _ => usual,
        CustomParser = given =>
        {
            var text = given.Tokens is [.., var last] ? last.Value : "nothing";
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
            {
                return number;
            }

            given.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} is {text}; it can only be a whole number from {least} to {most}."));
            return usual;
        },
    };

    /// <summary>An option whose value was forgotten would else take the next option for it, and <c>--out --json</c> draw into a folder of that name.</summary>
    internal static void KeepOptionsApart(Command verb) => verb.Validators.Add(parsed =>
    {
        foreach (var option in verb.Options)
        {
            if (parsed.GetResult(option)?.Tokens.FirstOrDefault(token => verb.Options.Any(other => other.Name == token.Value)) is { } swallowed)
            {
                parsed.AddError(Faults.NoValue(option, swallowed.Value));
            }
        }
    });

    /// <summary>What was written behind an option; null where it was not given, or given without its value, which is told elsewhere.</summary>
    internal static string? Written(this CommandResult parsed, Option option) => parsed.GetResult(option) is { Tokens: [var word, ..] } ? word.Value : null;

    /// <summary>Whether an option was given, with or without its value.</summary>
    internal static bool IsGiven(this CommandResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    /// <summary>How many words an argument has.</summary>
    internal static int Count(this CommandResult parsed, Argument argument) => parsed.GetResult(argument)?.Tokens.Count ?? 0;

    /// <summary>A command whose description ends with an example.</summary>
    internal static Command Verb(string name, string description, string example) => new(name, $"{description}\n\nExample:\n  {example}");
}
