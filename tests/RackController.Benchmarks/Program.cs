using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

// In this process: what is measured is what this build made, under the repository's own settings.
var config = ManualConfig.CreateEmpty()
    .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
    .AddDiagnoser(MemoryDiagnoser.Default)
    .AddColumnProvider(DefaultColumnProviders.Descriptor, DefaultColumnProviders.Statistics, DefaultColumnProviders.Metrics)
    .AddLogger(ConsoleLogger.Default)
    .WithOptions(ConfigOptions.JoinSummary)
    .WithArtifactsPath(Path.Combine("artifacts", "benchmarks"));
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args.Length == 0 ? ["--filter", "*"] : args, config);
