using System.CommandLine;

namespace DetailGen.Cli.Verbs;

/// <summary>Arguments that several verbs share.</summary>
internal static class Arguments
{
    internal static Argument<string[]> Presets(string description) => new("PRESET") { Description = description, Arity = ArgumentArity.OneOrMore };

    internal static Argument<string> Preset() => new("PRESET") { Description = "Preset file (YAML)." };

    internal static Option<string[]> Set() => new("--set")
    {
        Description = "Fix a value, over what the preset says; may be repeated.",
        HelpName = "KEY=VALUE",
        AllowMultipleArgumentsPerToken = false,
        DefaultValueFactory = _ => [],
    };

    /// <summary>A command whose description ends with an example.</summary>
    internal static Command Verb(string name, string description, string example) => new(name, $"{description}\n\nExample:\n  {example}");
}
