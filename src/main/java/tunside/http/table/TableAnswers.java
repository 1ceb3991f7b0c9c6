package tunside.http.table;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Answers with a table and its entity tag, or with 304 where the caller has that version already. */
@Singleton
public final class TableAnswers {
    private final ObjectMapper mapper;

    @Inject
    public TableAnswers(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /** The answer to a conditional or plain {@code GET}. */
    public Response of(Request request, Object answer) {
        byte[] body = json(answer);
        EntityTag tag = new EntityTag(digest(body));
        Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
        return unchanged != null
                ? unchanged.build()
                : Response.ok(body, MediaType.APPLICATION_JSON).tag(tag).build();
    }

    private byte[] json(Object answer) {
        try {
            return mapper.writeValueAsBytes(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String digest(byte[] body) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(body);
            return HexFormat.of().formatHex(hash, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
