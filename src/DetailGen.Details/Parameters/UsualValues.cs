using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>Usual values of a practice, from its <c>defaults.yaml</c>: they go before the usual values of the components.</summary>
public sealed class UsualValues
{
    /// <summary>The name of the file on the shelf; none ships.</summary>
    public const string File = "presets/defaults.yaml";

    public static TableShape Shape { get; } = new(new AnySettingShape(), "parameter");

    private readonly SortedDictionary<string, Setting> _values = new(StringComparer.Ordinal);

    private UsualValues()
    {
    }

    public static UsualValues None { get; } = new();

    /// <summary>Null where the practice says nothing of it.</summary>
    public Setting? Find(string key) => _values.TryGetValue(key, out var value) ? value : null;

    /// <param name="components">Every component; a value must suit one that has the parameter.</param>
    public static Outcome<UsualValues> Load(Shelf shelf, IReadOnlyList<Component> components)
    {
        if (shelf.Find(File) is not { } file)
        {
            return Outcome.Good(None);
        }

        var read = file.Read().ToOutcome();
        IReadOnlyList<Diagnostic> wrong = read.IsGood ? ShapeCheck.Check(read.Value, Shape) : read.Faults;
        if (wrong.Count > 0)
        {
            return Outcome.Bad<UsualValues>(wrong);
        }

        var (values, faults) = (new UsualValues(), new List<Diagnostic>());
        foreach (var entry in ((MapNode)read.Value).Entries)
        {
            var (node, known) = ((ScalarNode)entry.Value, components.SelectMany(component => component.Parameters).Where(parameter => parameter.Key == entry.Key).ToList());
            if (known.Count == 0)
            {
                faults.Add(Messages.UnknownKey(entry.KeyAt, entry.Key, "defaults", [.. components.SelectMany(component => component.Parameters).Select(parameter => parameter.Key).Distinct(StringComparer.Ordinal)]));
                continue;
            }

            var setting = SettingReader.Read(node.Text, node.At, entry.Key, known[0].Unit, [.. known.SelectMany(parameter => parameter.Options).Distinct(StringComparer.Ordinal)]);
            faults.AddRange(setting.Faults);
            if (setting.IsGood)
            {
                values._values[entry.Key] = setting.Value;
                if (known.All(parameter => parameter.Domain is not null) && known.Select(parameter => DomainCheck.Fault(entry.Key, setting.Value, parameter.Domain!, node.Text, node.At)).ToList() is var checks && checks.All(fault => fault is not null))
                {
                    faults.Add(checks[0]!);
                }
            }
        }

        return faults.Count == 0 ? Outcome.Good(values) : Outcome.Bad<UsualValues>(faults);
    }
}
