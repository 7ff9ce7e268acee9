using BenchmarkDotNet.Running;
using DetailGen.Benchmarks;

// stages [PRESET] [RUNS]     where the time of one warm drawing goes
// variants [PRESET] [COUNT]  many drawings in one process: does time stay in proportion, does memory stay flat
// solver [NAME]              every shipped preset: size of the model, solving, all ranges, one move of a given size, the ratio to CP-SAT
// scaling [MOST]             solving models of up to so many unknowns
// dxf [COUNT]                writing and reading drawings of up to so many entities
// fields [CASE] [RUNS]       two-dimensional heat flow: time to a gap of the bounds, against a bare factorisation; gap and time over unknowns
// fields variants [COUNT]    many variants of one junction in one process, and what the second film costs
// fields large               bare solutions up to a million unknowns
// anything else goes to BenchmarkDotNet
return args switch
{
    ["stages", .. var rest] => StageTimes.Print(rest),
    ["variants", .. var rest] => Variants.Print(rest),
    ["solver", .. var rest] => SolverTimes.Print(rest),
    ["scaling", .. var rest] => SolverScaling.Print(rest),
    ["fields", "variants", .. var rest] => FieldVariants.Print(rest),
    ["fields", "large"] => FieldTimes.PrintLarge(),
    ["fields", .. var rest] => FieldTimes.Print(rest),
    ["dxf", .. var rest] => DxfThroughput.Print(rest),
    _ => Measure(args),
};

static int Measure(string[] arguments)
{
    BenchmarkSwitcher.FromAssembly(typeof(PipelineBenchmarks).Assembly).Run(arguments);
    return 0;
}
