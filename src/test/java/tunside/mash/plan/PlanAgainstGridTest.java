package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.mash.MashPrediction;

/** The plan against every plan of a grid, each solved with the full balance. */
class PlanAgainstGridTest {
    private static final int POINTS = 6000;

    /** The first three supplies of a question that chance makes, no acid and base together. */
    private static PlanQuestion small(int seed) {
        PlanQuestion question = PlanQuestions.random(new SplittableRandom(1000 + seed));
        List<PlanSupply> few = new ArrayList<>();
        boolean setter = false;
        for (PlanSupply supply : question.supplies()) {
            boolean sets = supply.role() == PlanSupply.Role.ACID || supply.role() == PlanSupply.Role.BASE;
            if (few.size() < 3 && !(sets && (setter || !PlanSearch.mayUse(question, supply.role())))) {
                few.add(supply);
                setter |= sets;
            }
        }
        return new PlanQuestion(
                question.mash(), question.water(), question.aim(), few, question.wants(), question.mostLactateMgPerL());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19})
    void noPlanOfTheGridIsBetter(int seed) {
        PlanQuestion question = small(seed);
        PlanAnswer answer = PlanAnswer.of(question);
        PlanSpace space = PlanSpace.of(question, MashPrediction.of(question.mash()));
        int size = question.supplies().size();
        int perSupply = (int) Math.floor(Math.pow(POINTS, 1.0 / size));
        int[] stride = new int[size];
        int[] count = new int[size];
        int all = 1;
        for (int i = 0; i < size; i++) {
            int steps = (int)
                    Math.round(space.most()[i] / question.supplies().get(i).step());
            stride[i] = Math.max(1, (int) Math.ceil((double) steps / perSupply));
            count[i] = steps / stride[i] + 1;
            all *= count[i];
        }
        double best = Double.POSITIVE_INFINITY;
        for (int point = 0; point < all; point++) {
            double[] amounts = new double[size];
            int rest = point;
            for (int i = 0; i < size; i++) {
                amounts[i] =
                        rest % count[i] * stride[i] * question.supplies().get(i).step();
                rest /= count[i];
            }
            if (space.allows(amounts)) {
                best = Math.min(
                        best, space.score(amounts, question.with(amounts).ph()).total());
            }
        }
        assertThat(answer.best().score().total()).isLessThanOrEqualTo(best + 1e-3);
    }
}
