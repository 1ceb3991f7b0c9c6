package tunside.chemistry;

/** A component of a mash or wort that takes up or gives protons as the pH moves. */
@FunctionalInterface
public interface ProtonTerm {
    /**
     * Protons taken up on the way from the component's own state to a pH.
     *
     * @return mEq, positive when it takes up, negative when it gives; never rising with the pH
     */
    double uptakeMeq(double ph);
}
