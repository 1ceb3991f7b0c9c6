package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tunside.quantity.Temperature;

class SolverTest {
    @Test
    void aWaterIsOneSolveOfAFewSteps() {
        long solves = Solver.WATER.solves();
        long steps = Solver.WATER.iterations();
        ChargeBalance.solve(Solution.of(Ion.CALCIUM, 0.002).withCarbon(0.004), new Temperature(20));
        assertThat(Solver.WATER.solves() - solves).isEqualTo(1);
        assertThat(Solver.WATER.iterations() - steps).isBetween(2L, 20L);
    }

    @Test
    void aWaterWhoseChargeNoPhBalancesIsASolveToo() {
        long solves = Solver.WATER.solves();
        new Speciation(Solution.ofBase(50), new Temperature(20)).neutralPh();
        assertThat(Solver.WATER.solves() - solves).isEqualTo(1);
    }

    @Test
    void everyEvaluationOfAMashsBalanceIsCounted() {
        long[] asked = {0};
        ProtonBalance balance = new ProtonBalance(List.of(ph -> {
            asked[0]++;
            return Math.exp(-ph) - Math.exp(-5.4);
        }));
        long solves = Solver.MASH.solves();
        long evaluations = Solver.MASH.iterations();
        balance.solve();
        int ends = 2; // looked at before the solver starts
        assertThat(Solver.MASH.solves() - solves).isEqualTo(1);
        assertThat(Solver.MASH.iterations() - evaluations).isEqualTo(asked[0] - ends);
    }
}
