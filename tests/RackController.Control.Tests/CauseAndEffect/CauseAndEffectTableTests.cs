using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

public sealed class CauseAndEffectTableTests
{
    private static readonly Site site = Sites.ManyRacks(3, racksToACircuit: 2);

    [Fact]
    public void ARowStandsWhereItsScopeSays()
    {
        foreach (var at in CauseAndEffectTable.At(site))
        {
            Assert.All(at.Stands, stand => Assert.True(
                at.Row.Scope switch
                {
                    RowScope.Rack => stand.Rack is not null,
                    RowScope.Circuit => stand.Circuit is not null,
                    RowScope.Sensor or RowScope.RackAndCircuit => stand.Rack is not null || stand.Circuit is not null,
                    _ => stand is { Rack: null, Circuit: null },
                },
                $"{at.Row.Id} stands at {stand.Place}, which is no {at.Row.Scope}"));
        }
    }

    [Fact]
    public void ARackThatLosesItsLowFloatLosesTheRowAndNoOther()
    {
        var lowFloat = site.SensorNamed("rack 2/reservoir low float");
        var without = site with
        {
            Sensors = site.Sensors.SetItem(
                lowFloat.Index, site.Sensors[lowFloat.Index] with { Kind = SensorKind.WaterTemperature, PlausibleMax = 50 }),
        };
        var lost = CauseAndEffectTable.At(without).Zip(CauseAndEffectTable.At(site))
            .Where(pair => !pair.First.Lacking.SequenceEqual(pair.Second.Lacking))
            .ToDictionary(pair => pair.First.Row.Id, pair => pair.First.Lacking.Except(pair.Second.Lacking).ToArray());
        Assert.Equal(["rack 2"], lost["low-float"]);
        Assert.DoesNotContain(lost, row => row.Key != "low-float" && row.Value.Length > 0);
    }

    [Fact]
    public void ACircuitRowActsOnEverythingThatDrawsFromIt()
    {
        var supply = CauseAndEffectTable.At(site).Single(at => at.Row.Id == "supply-lost");
        Assert.Equal(["sockets 1", "sockets 2"], supply.Stands.Select(stand => stand.Place));
        Assert.All(supply.Stands, stand => Assert.Equal(
            site.Loads.Where(load => load.Circuit == stand.Circuit).Select(load => load.Id), stand.Loads));
    }

    [Fact]
    public void TheLimitsOfTheRackFileAreNamed()
    {
        var limits = site.WithLimits(each => each with { PumpMaximumRun = NodaTime.Duration.FromMinutes(7), MaximumRunsToLatch = 4 });
        var row = CauseAndEffectTable.At(limits).Single(at => at.Row.Id == "pump-maximum-run");
        Assert.Equal(
            ["7 min; 4 times in 24 h latch", "15 min; 3 times in 24 h latch", "15 min; 3 times in 24 h latch"],
            row.Stands.Select(stand => stand.Settings));
    }

    [Fact]
    public void APumpThatIsWeldedActsOnAllThatItsContactorCuts()
    {
        var metered = WithCurrent(site with { Circuits = [.. site.Circuits.Select(each => each with { HasUpstreamContactor = true })] });
        var welded = CauseAndEffectTable.At(metered).Single(at => at.Row.Id == "relay-welded");
        Assert.Equal(
            site.Loads.Where(load => load.Circuit == site.Circuits[0].Id).Select(load => load.Id),
            welded.Stands.Single(stand => stand.Place == "rack 1/pump").Loads);
        Assert.Empty(welded.Stands.Single(stand => stand.Place == "rack 1/tier 1 light").Loads);
    }

    [Fact]
    public void ACircuitWithoutASensorOfItsCurrentLacksTheRowsThatGoByIt()
    {
        var lacking = CauseAndEffectTable.At(site).Single(at => at.Row.Id == "circuit-over-limit").Lacking;
        Assert.Equal(["sockets 1", "sockets 2"], lacking);
        var metered = WithCurrent(site);
        Assert.Empty(CauseAndEffectTable.At(metered).Single(at => at.Row.Id == "circuit-over-limit").Lacking);
        var first = metered with { Sensors = metered.Sensors.RemoveAt(metered.Sensors.Length - 1) };
        Assert.Equal(["sockets 2"], CauseAndEffectTable.At(first).Single(at => at.Row.Id == "circuit-over-limit").Lacking);
    }

    [Fact]
    public void ARowComesBackByWhatItSaysItComesBackBy() => Assert.All(CauseAndEffectTable.Rows, row =>
    {
        Assert.Equal(Says(row, "reset") || Says(row, "latch"), row.Returns.HasFlag(WaysBack.Reset));
        Assert.Equal(Says(row, "acknowledged"), row.Returns.HasFlag(WaysBack.Acknowledgement));
    });

    [Fact]
    public void AnAeratorIsCheckedByTheSensorOfItsOwnCircuitOnly()
    {
        var checks = CauseAndEffectTable.At(WithCurrent(site)).Single(at => at.Row.Id == "load-check").Stands;
        Assert.Equal(checks.Length, checks.Select(stand => stand.Place).Distinct().Count());
        Assert.Contains(checks, stand => stand.Place == "rack 3/aerator");
    }

    [Fact]
    public void EveryLimitOfEveryRowIsNamedWhereAllSensorsAre()
    {
        // On some sites fills are timed, on others they end by level.
        var settings = Enumerable.Range(1, 10).SelectMany(seed => CauseAndEffectTable.At(Scanning.RandomStory.Of(seed).Site))
            .ToLookup(at => at.Row.Id, at => at.Stands.Select(stand => stand.Settings));
        string[] withLimits = ["air-too-hot", "fill-slow", "float-still", "float-stuck", "no-fill", "relay-worn"];
        Assert.All(withLimits, row => Assert.All(settings[row].SelectMany(each => each), Assert.NotEmpty));
        Assert.All(withLimits, row => Assert.NotEmpty(settings[row].SelectMany(each => each)));
    }

    [Fact]
    public void TheTableAsADocumentHasALineForEveryRow()
    {
        var lines = CauseAndEffectTable.ToMarkdown().Split('\n');
        Assert.Equal("# Cause and effect", lines[0]);
        Assert.Contains("Forbidding always wins over wishing, and no request overrides a row.", lines[3], StringComparison.Ordinal);
        Assert.StartsWith("Generated from the table that the controller runs from.", lines[2], StringComparison.Ordinal);
        Assert.StartsWith("| row | cause | needs | effect | comes back |", lines[5], StringComparison.Ordinal);
        Assert.Equal("|---|---|---|---|---|---|", lines[6]);
        Assert.All(CauseAndEffectTable.Rows, row => Assert.Single(
            lines, line => line.StartsWith($"| `{row.Id}` | {row.Cause} |", StringComparison.Ordinal)));
        Assert.Contains(lines, line => line.EndsWith("| none: it acts in the ordinary course of things |", StringComparison.Ordinal));
    }

    private static bool Says(CauseAndEffectRow row, string word) => row.ComesBack.Contains(word, StringComparison.Ordinal);

    private static Site WithCurrent(Site site) => site with
    {
        Sensors =
        [
            .. site.Sensors,
            .. site.Circuits.Select(circuit => site.Sensors[^1] with
            {
                Id = new SensorId(site.Sensors.Length + circuit.Id.Index), Name = $"{circuit.Name}/current",
                Kind = SensorKind.CircuitCurrent, Rack = null, TierNumber = null, Circuit = circuit.Id, PlausibleMax = 20,
            }),
        ],
    };
}
