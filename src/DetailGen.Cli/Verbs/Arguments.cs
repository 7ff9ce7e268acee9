using System.CommandLine;

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
                value.AddError($"There is no option {token.Value}.");
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

    /// <summary>A command whose description ends with an example.</summary>
    internal static Command Verb(string name, string description, string example) => new(name, $"{description}\n\nExample:\n  {example}");
}
