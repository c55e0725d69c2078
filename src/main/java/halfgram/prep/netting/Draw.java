package halfgram.prep.netting;

import halfgram.lot.Lot;
import halfgram.measure.Amount;

/** Part of a tub that meets a need. */
public record Draw(Lot lot, Need need, Amount amount) {}
