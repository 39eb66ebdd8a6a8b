using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests;

/// <summary>A record may survive its disk in part. Whatever numbers are left, a rack is driven, and nothing may run for longer.</summary>
public sealed class BrokenMemoryTests
{
    private static readonly Gen<long> Nonsense = Gen.OneOf(
        Gen.Long, Gen.Int.Select(number => (long)number), Gen.Int[-2, 2].Select(near => near + (1L << 53)),
        Gen.Int[-1, 9].Select(few => (long)few));

    [Fact]
    [Trait("Pace", "long")]
    public void WhateverNumbersARecordHoldsARackIsDrivenByIt() =>
        Gen.Select(Nonsense.Array[200], Gen.Long[-377_673_580_800, 253_402_300_799], Gen.Bool).Sample(
            (numbers, savedAt, trusted) =>
            {
                var items = Remembered().Items.Keys.Select((key, index) => KeyValuePair.Create(key, numbers[index % numbers.Length]));
                var memory = new ControlMemory(
                    Instant.FromUnixTimeSeconds(savedAt), trusted, ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, items));

                var rig = new Rig(Sites.OneRack(), memory: memory);
                rig.ScanFor(Duration.FromMinutes(3));

                Assert.NotEmpty(rig.Control.Save().Items);
            },
            iter: 300);

    [Theory]
    [InlineData(-1)]
    [InlineData(long.MinValue)]
    [InlineData(long.MaxValue)]
    public void ARunTotalThatMakesNoSenseIsABudgetUsedUp(long used)
    {
        var memory = Remembered();
        var rig = new Rig(
            Sites.OneRack(), memory: memory with { Items = memory.Items.SetItem("north/pump-daily-budget/used", used) });

        rig.ScanFor(Duration.FromSeconds(1));

        Assert.Contains(rig.Control.Why()[0].Interlocks, words => words.Contains("for the day", StringComparison.Ordinal));
    }

    private static ControlMemory Remembered()
    {
        var rig = new Rig(Sites.OneRack());
        rig.ScanFor(Duration.FromMinutes(3));
        return rig.Control.Save();
    }
}
