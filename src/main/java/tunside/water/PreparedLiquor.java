package tunside.water;

import java.util.ArrayList;
import java.util.List;
import tunside.quantity.Volume;

/**
 * A liquor from its sources to what goes into the kettle: poured together, then treated step by step.
 *
 * @param sources at least one
 * @param waters what each source is, in their order
 * @param blended all of them together
 * @param treatments in the order in which they are done
 * @param steps what each treatment did
 */
public record PreparedLiquor(
        List<WaterSource> sources,
        List<Water> waters,
        Water blended,
        List<Treatment> treatments,
        List<TreatmentStep> steps) {
    public PreparedLiquor {
        sources = List.copyOf(sources);
        waters = List.copyOf(waters);
        treatments = List.copyOf(treatments);
        steps = List.copyOf(steps);
    }

    /**
     * Blends and treats.
     *
     * @param sources at least one
     * @throws IllegalArgumentException if a source or a treatment is none
     */
    public static PreparedLiquor of(List<WaterSource> sources, List<Treatment> treatments) {
        List<Water> waters = sources.stream().map(WaterSource::water).toList();
        return of(sources, waters, treatments);
    }

    /** The same where the sources have been read already. */
    public static PreparedLiquor of(List<WaterSource> sources, List<Water> waters, List<Treatment> treatments) {
        List<WaterPart> parts = new ArrayList<>();
        for (int i = 0; i < waters.size(); i++) {
            parts.add(new WaterPart(sources.get(i).volume(), waters.get(i)));
        }
        Water blended = waters.size() == 1 ? waters.get(0) : Water.blend(parts);
        Volume volume = volume(sources);
        List<TreatmentStep> steps = new ArrayList<>();
        Water water = blended;
        for (Treatment treatment : treatments) {
            TreatmentStep step = treatment.applied(water, volume);
            steps.add(step);
            water = step.water();
        }
        return new PreparedLiquor(sources, waters, blended, treatments, steps);
    }

    /** Volume of all sources. */
    public Volume volume() {
        return volume(sources);
    }

    private static Volume volume(List<WaterSource> sources) {
        double litres = 0;
        for (WaterSource source : sources) {
            litres += source.volume().litres();
        }
        return new Volume(litres);
    }

    /** What comes out, at the temperature of the blend. */
    public Water treated() {
        return steps.isEmpty() ? blended : steps.get(steps.size() - 1).water();
    }

    /**
     * The same liquor in every way in which it may be off: each uncertain value of each source, each volume, each
     * treatment, one standard uncertainty further, one at a time. Independent of each other; at most four a source and two
     * a treatment.
     */
    public List<PreparedLiquor> varied() {
        List<PreparedLiquor> all = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            for (Water other : sources.get(i).variedWaters()) {
                all.add(of(sources, replaced(waters, i, other), treatments));
            }
            WaterSource source = sources.get(i);
            Volume more = new Volume(source.volume().litres() * (1 + WaterModel.value("source-volume-relative")));
            all.add(of(
                    replaced(sources, i, new WaterSource(source.name(), more, source.report(), source.share())),
                    waters,
                    treatments));
        }
        for (int i = 0; i < treatments.size(); i++) {
            for (Treatment other : treatments.get(i).varied()) {
                all.add(of(sources, waters, replaced(treatments, i, other)));
            }
        }
        return all;
    }

    private static <T> List<T> replaced(List<T> list, int index, T item) {
        List<T> copy = new ArrayList<>(list);
        copy.set(index, item);
        return copy;
    }
}
