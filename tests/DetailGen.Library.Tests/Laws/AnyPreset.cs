using System.Globalization;
using System.Text;
using CsCheck;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Laws;

/// <summary>A preset as somebody might write it: a pairing, circumstances, choices, materials and sizes, with the shipped rules.</summary>
internal sealed record AnyPreset(
    Component Junction, Component Wall, Component Roof, IReadOnlyList<string> Circumstances, IReadOnlyList<(string Key, string Value)> Set,
    IReadOnlyList<(string Key, string Value)> Prefer, IReadOnlyList<(string Slot, string Material)> Materials, IReadOnlyList<string> Targets)
{
    internal static readonly Office Office = Office.Of(null).Value;

    /// <summary>Any choices, materials and wishes; up to four sizes, each set to a value that the rest allows.</summary>
    public static Gen<AnyPreset> Solvable => Seeded.Select(made => made.Preset.Settled(made.Random)).Where(preset => preset.IsSolvable);

    /// <summary>Any choices and materials, and two to seven sizes anywhere in their domains; every third with a target.</summary>
    public static Gen<AnyPreset> Contradictory => Seeded.Select(made => made.Preset.Asking(made.Random)).Where(preset => !preset.IsSolvable);

    private static Gen<(AnyPreset Preset, Random Random)> Seeded =>
        from pairing in Gen.Int[0, 7]
        from seed in Gen.Int[0, int.MaxValue]
        let random = new Random(seed)
        select (Begun(pairing, random), random);

    private bool IsSolvable => DetailSolver.Ranges(Read(), Office.Catalogue, []) is not null;

    private IEnumerable<Component> Components => [Wall, Roof, Junction];

    /// <summary>The text of its file.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"detail: any\njunction: {Junction.Id}\nwall: {Wall.Id}\nroof: {Roof.Id}\nrules: [uk]\n");
        foreach (var group in Circumstances.GroupBy(one => one.Split('.')[0], StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"{group.Key}: {{ {string.Join(", ", group.Select(one => one.Split('.', 2)[1]))} }}\n");
        }

        Map("set", Set);
        Map("prefer", Prefer);
        Map("materials", Materials);
        if (Targets.Count > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"target: {{ {string.Join(", ", Targets)} }}\n");
        }

        return text.ToString();

        void Map(string name, IReadOnlyList<(string Key, string Value)> entries)
        {
            if (entries.Count > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"{name}:\n");
                foreach (var (key, value) in entries)
                {
                    text.Append(CultureInfo.InvariantCulture, $"  {key}: {value}\n");
                }
            }
        }
    }

    /// <summary>Does something with it as a file that nobody keeps.</summary>
    public void AsFile(Action<string> work) => Scratch.Folder(folder =>
    {
        var path = Path.Combine(folder, "any.yaml");
        File.WriteAllText(path, ToString());
        work(path);
    });

    public Preset Read()
    {
        Preset? read = null;
        AsFile(path => read = PresetFiles.Read(path, [], Office).Value);
        return read!;
    }

    private static AnyPreset Begun(int pairing, Random random)
    {
        var all = Office.Context.Components;
        Component Pick(ComponentKind kind, int of) => all.Find(kind, all.Ids(kind)[of % all.Ids(kind).Count])!.Value;
        AnyPreset preset = new(Pick(ComponentKind.Junction, pairing), Pick(ComponentKind.Wall, pairing / 2), Pick(ComponentKind.Roof, pairing / 4), [], [], [], [], []);
        var materials = preset.Components.SelectMany(component => component.Slots).Where(_ => random.Next(12) == 0).DistinctBy(slot => slot.Key)
            .Select(slot => (slot.Key, Any(Office.Materials.All.Where(material => slot.Kinds.Contains(material.Material.Kind, StringComparer.Ordinal)).Select(material => material.Material.Id), random)));
        var made = preset with
        {
            Circumstances = [.. Vocabulary.Circumstances.Skip(1).Where(_ => random.Next(3) == 0).Select(one => $"{one.Name}: {Any(one.Options, random)}")],
            // these decide each other, so that any words of them mostly contradict
            Set = [.. preset.Parameters(Unit.Choice).Where(one => one.Key is not ("tray.discharge" or "upstand.top" or "roof.tied-to-wall") || random.Next(4) == 0).Select(one => (one.Key, Any(one.Options, random)))],
            Prefer = [.. preset.Parameters(Unit.Length).Where(_ => random.Next(6) == 0).Select(one => (one.Key, Anywhere(one, random)))],
            Materials = [.. materials],
        };
        return made.Here();
    }

    private AnyPreset Settled(Random random)
    {
        var preset = this;
        for (var i = random.Next(5); i > 0 && preset.IsSolvable; i--)
        {
            var parameter = Any(preset.Parameters(Unit.Length, Unit.Ratio), random);
            if (DetailSolver.Ranges(preset.Read(), Office.Catalogue, [parameter.Key]) is [{ Proven: true } range])
            {
                var (low, high) = Any(range.Values, random);
                var value = range.Step is { } step ? low + (step * random.NextInt64(((high - low) / step) + 1)) : low;
                preset = preset with { Set = [.. preset.Set, (range.Key, Setting.Numeric(range.Unit, value).ToString())] };
            }
        }

        return preset with { Prefer = [.. preset.Prefer.Where(wish => preset.Set.All(given => given.Key != wish.Key))] };
    }

    private AnyPreset Asking(Random random)
    {
        var set = Enumerable.Range(0, random.Next(2, 8)).Select(_ => Any(Parameters(Unit.Length, Unit.Ratio, Unit.Count), random)).DistinctBy(one => one.Key).Select(one => (one.Key, Anywhere(one, random)));
        var asked = this with
        {
            Set = [.. Set, .. set],
            Prefer = [],
            Targets = random.Next(3) > 0 ? [] : [$"{(random.Next(2) == 0 ? "roof" : "wall")}.u-value: {(random.Next(8, 31) / 100m).ToString(CultureInfo.InvariantCulture)}"],
        };
        return asked.Here();
    }

    /// <summary>Without the keys that this detail turns out not to have.</summary>
    private AnyPreset Here()
    {
        var preset = this;
        while (true)
        {
            IReadOnlyList<string?> gone = [];
            preset.AsFile(path => gone = [.. PresetFiles.Read(path, [], Office).Faults.Select(fault => fault.Key)]);
            if (gone.Count == 0)
            {
                return preset;
            }

            var fewer = preset with
            {
                Set = [.. preset.Set.Where(given => !gone.Contains(given.Key))],
                Prefer = [.. preset.Prefer.Where(given => !gone.Contains(given.Key))],
                Materials = [.. preset.Materials.Where(given => !gone.Contains(given.Slot))],
            };
            if (fewer.Set.Count == preset.Set.Count && fewer.Prefer.Count == preset.Prefer.Count && fewer.Materials.Count == preset.Materials.Count)
            {
                throw new InvalidOperationException($"Cannot be read: {preset}");
            }

            preset = fewer;
        }
    }

    private IReadOnlyList<Parameter> Parameters(params IReadOnlyList<Unit> units) =>
        [.. Components.SelectMany(component => component.Parameters).Where(one => units.Contains(one.Unit)).DistinctBy(one => one.Key)];

    private static string Anywhere(Parameter parameter, Random random)
    {
        var domain = parameter.Domain!;
        return Setting.Numeric(parameter.Unit, domain.From + (random.NextInt64(((domain.To - domain.From) / domain.Step) + 1) * domain.Step)).ToString();
    }

    private static T Any<T>(IEnumerable<T> of, Random random) => of.ElementAt(random.Next(of.Count()));
}
