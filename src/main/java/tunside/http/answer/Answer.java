package tunside.http.answer;

import java.util.List;

/** What every answer and every problem tells whoever counts them. */
public interface Answer {
    /** Every check, passed or not. */
    List<Check> checks();

    /** How it ended, in a word of the contract; "answered" where there is only that one way. */
    default String ending() {
        return "answered";
    }
}
