namespace ZoneControl.Bench.Rules;

/// <summary>A rule's identity and sentence, as people read it.</summary>
/// <param name="Id">Identity: "PUMP-PROOF".</param>
/// <param name="Sentence">The rule in one sentence.</param>
public sealed record Rule(string Id, string Sentence);
