package tunside.mash;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidSystem;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;

/** What liquor and additions dissolve in the mash; what the malt gives is left out. */
final class MashIons {
    /** Molar mass of bicarbonate, g/mol (IUPAC-WEIGHTS). */
    private static final double BICARBONATE = 61.016;

    private MashIons() {}

    /** In mg per litre of liquor: ions in their usual order, bicarbonate at the pH, then the acids' anions. */
    static List<DissolvedAmount> of(Mash mash, double ph) {
        double litres = mash.liquor().volume().litres();
        Solution sum = mash.liquor().solution();
        for (Addition addition : mash.additions()) {
            if (addition instanceof AcidAddition acid) {
                sum = sum.plus(acid.acid().perMole().scaled(acid.millimoles().value() / 1000 / litres));
            } else if (addition instanceof SaltAddition salt) {
                sum = sum.plus(salt.salt().perGram().scaled(mash.dissolvedGrams(salt) / litres));
            }
        }
        sum = sum.plus(acidOfMalts(mash, litres));
        Map<String, Double> amounts = new LinkedHashMap<>();
        for (Ion ion : Ion.ALL) {
            amounts.put(ion.symbol(), 1000 * sum.ion(ion) * ion.molarMassGPerMol());
        }
        double bicarbonate = Acids.CARBONIC.shares(ph, MashEquation.CONSTANTS_AT)[1];
        double kept = 1 - mash.model().carbonDioxideLost().value();
        amounts.put("HCO3", 1000 * sum.carbon() * kept * bicarbonate * BICARBONATE);
        for (Map.Entry<AcidSystem, Double> entry : sum.acids().entrySet()) {
            Acid acid = Acids.get(entry.getKey().id());
            amounts.put(acid.anion(), 1000 * entry.getValue() * acid.anionMolarMassGPerMol());
        }
        List<DissolvedAmount> list = new ArrayList<>();
        amounts.forEach((symbol, mgPerL) -> list.add(new DissolvedAmount(symbol, mgPerL)));
        return list;
    }

    private static Solution acidOfMalts(Mash mash, double litres) {
        Acid lactic = Acids.get("lactic");
        double grams = 0;
        for (GristPart part : mash.grist().parts()) {
            double percent =
                    part.malt().countedLacticAcidPercent().map(Estimate::value).orElse(0.0);
            grams += part.mass().grams() * percent / 100;
        }
        return grams == 0 ? Solution.WATER : lactic.perMole().scaled(grams / lactic.molarMassGPerMol() / litres);
    }
}
