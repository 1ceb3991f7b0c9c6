package tunside.http.dosing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tunside.dosing.DosedLiquid;
import tunside.http.answer.Basis;
import tunside.http.answer.LastingList;

/** What a dose rests on. */
final class DoseBasis {
    private static final List<String> MASH = assumptions(
            "The proton balance of the mash, shifted to the pH measured in a cooled sample: the malts' own pH does not"
                    + " matter any more.",
            "The buffering of malts known by class is log-normal with the published spread, a standard deviation of"
                    + " 28 %; measured malts have their own.");

    private static final List<String> LIQUOR = assumptions(
            "A closed vessel: no carbon dioxide escapes before the pH is read.",
            "The alkalinity of the report is good to 5 %, near zero to 0.05 mEq/L; 1 kg of water is 1 L.",
            "Davies activities; complexes of calcium and magnesium with citrate and phosphate.");

    private static final List<String> WORT_OR_BEER = assumptions(
            "The buffering is even over the pH in question; from extract or malt it is a rule of thumb of 10 to 12 %,"
                    + " for beer of 25 % more, from a bench titration what that tells.");

    private DoseBasis() {}

    private static List<String> assumptions(String... ofTheLiquid) {
        List<String> assumptions = new ArrayList<>(List.of(ofTheLiquid));
        assumptions.add(
                "Bayes on the non-linear balance: every reading of the history narrows buffering and pH. A reading that"
                        + " is more than three deviations off is believed only in part.");
        assumptions.add("Label and syringe are good to 3 % together (common practice).");
        assumptions.add("Later stages hold if every reading comes as expected; ask again after each.");
        return LastingList.of(assumptions);
    }

    static Basis of(DosedLiquid liquid, AcidDoseReading reading) {
        List<String> assumptions = switch (liquid) {
            case MASH -> MASH;
            case LIQUOR -> LIQUOR;
            case WORT, BEER -> WORT_OR_BEER;
        };
        Set<String> sources = new LinkedHashSet<>();
        switch (liquid) {
            case MASH -> sources.addAll(List.of("TROESTER-2009", "DELANGE-2015", "KOLBACH-1953", "HOSOM-2018"));
            case LIQUOR -> sources.addAll(List.of("PLUMMER-BUSENBERG-1982", "DAVIES-1962", "NIST-46", "PHREEQC-3"));
            case WORT, BEER ->
                sources.addAll(List.of("DERIVED", reading.question().prior().source()));
        }
        sources.add("ROBINSON-STOKES");
        reading.dosed().ifPresent(dosed -> sources.add(dosed.densitySource()));
        reading.bought().filter(bought -> bought.directShare() < 1).ifPresent(bought -> sources.add("VU-2005"));
        sources.addAll(List.of("DERIVED", "COMMON-PRACTICE"));
        return Basis.of("staged-dose", assumptions, List.copyOf(sources));
    }
}
