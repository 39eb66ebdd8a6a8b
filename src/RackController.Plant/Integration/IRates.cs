namespace RackController.Plant;

/// <summary>What an integrator needs to know of a system.</summary>
internal interface IRates
{
    /// <summary>How fast each part of the state changes, per second.</summary>
    void Rates(ReadOnlySpan<double> state, Span<double> rates);

    /// <summary>The size of an error of the state, as a share of what is allowed; infinite where a step tried too much and came to
    /// nothing that is a number.</summary>
    double Error(ReadOnlySpan<double> error);

    /// <summary>Puts right what a step cannot leave, such as less than no water, moving and never making water.</summary>
    /// <returns>Whether anything was put right.</returns>
    bool Settle(Span<double> state);
}
