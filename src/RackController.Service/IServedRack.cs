using RackController.Control;

namespace RackController.Service;

/// <summary>A site that is being driven, as a page sees it: it also follows what happens, puts on record what people do there, and may
/// change the rack file. From any thread.</summary>
public interface IServedRack : IRunningRack
{
    /// <summary>Everything that happens from now on. Whoever takes it too slowly loses the oldest of what waits.</summary>
    /// <param name="cancellation">Ends it.</param>
    IAsyncEnumerable<ControlEvent> FollowAsync(CancellationToken cancellation);

    /// <summary>What sensors said in the last minutes that is not in the journal's file yet, oldest first: samples wait for each other,
    /// to spare the card.</summary>
    IReadOnlyList<Sample> UnwrittenSamples();

    /// <summary>Puts on record what a person did that is no request to the rack: signed in, changed who may do what.</summary>
    /// <param name="what">What was done.</param>
    /// <param name="because">By whom, as a phrase that can follow "because".</param>
    void Record(string what, string because);

    /// <summary>Ends this run, loads safe first, so that another takes over at once with what the rack file says then.</summary>
    /// <param name="because">Why, as a phrase that can follow "because".</param>
    void StartAgain(string because);

    /// <summary>Writes into the operational log what went wrong with a face of the rack.</summary>
    /// <param name="what">What.</param>
    /// <param name="why">Why.</param>
    void Complain(string what, Exception why);
}
