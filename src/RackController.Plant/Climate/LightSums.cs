using RackController.Model;

namespace RackController.Plant;

/// <summary>Light that the crop of each tier has had. It is counted when the light changes and told at any time.</summary>
internal sealed class LightSums(int tiers, MonotonicTime start)
{
    private const double MicromolesPerMole = 1e6;

    private readonly double[] countedMolPerM2 = new double[tiers];
    private readonly double[] ppfd = new double[tiers];
    private MonotonicTime countedTo = start;

    /// <summary>Photons on a tier's crop since the start, mol/m2.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="now">The time now.</param>
    public double MolPerM2(int index, MonotonicTime now) =>
        countedMolPerM2[index] + ppfd[index] * PlantTime.Seconds(countedTo, now) / MicromolesPerMole;

    /// <summary>Other lights shine from now on.</summary>
    /// <param name="umolPerM2S">Photon flux on each tier, umol/m2/s.</param>
    /// <param name="now">The time now.</param>
    public void Shine(ReadOnlySpan<double> umolPerM2S, MonotonicTime now)
    {
        for (var index = 0; index < countedMolPerM2.Length; index++)
        {
            countedMolPerM2[index] = MolPerM2(index, now);
        }

        umolPerM2S.CopyTo(ppfd);
        countedTo = now;
    }
}
