package tunside.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;

/** Writes the constants of an enum by their names in the contract. */
@SuppressWarnings({"rawtypes", "unchecked"})
final class EnumWriter extends JsonSerializer<Enum> {
    private final Map<Enum, SerializableString> names;

    /** @param type of the enum, or of a constant that has a body of its own */
    EnumWriter(Class<?> type) {
        Class<? extends Enum> declared = (Class<? extends Enum>) (type.isEnum() ? type : type.getSuperclass());
        names = new EnumMap(declared);
        for (Enum constant : declared.getEnumConstants()) {
            names.put(constant, new SerializedString(ContractNames.of(constant)));
        }
    }

    @Override
    public void serialize(Enum value, JsonGenerator generator, SerializerProvider provider) throws IOException {
        generator.writeString(names.get(value));
    }
}
