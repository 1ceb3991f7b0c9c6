package tunside.ship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import io.fabric8.kubernetes.api.model.GenericKubernetesResource;
import io.fabric8.kubernetes.api.model.HasMetadata;
import io.fabric8.kubernetes.api.model.KubernetesResource;
import io.fabric8.kubernetes.api.model.Quantity;
import io.fabric8.kubernetes.client.utils.KubernetesSerialization;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Reads Kubernetes manifests strictly: a kind that does not exist, a value of the wrong type and a field that the model
 * does not know are all refused. The model itself only refuses the wrong type.
 */
final class Manifests {
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final KubernetesSerialization KUBERNETES = new KubernetesSerialization();

    private Manifests() {}

    /** Every document of a YAML text, as the model's object. */
    static List<HasMetadata> read(String yaml) throws IOException {
        List<HasMetadata> objects = new ArrayList<>();
        try (YAMLParser parser = new YAMLFactory().createParser(yaml)) {
            for (JsonNode document :
                    YAML.readerFor(JsonNode.class).<JsonNode>readValues(parser).readAll()) {
                objects.add(object(document));
            }
        }
        return objects;
    }

    private static HasMetadata object(JsonNode document) {
        Object read = KUBERNETES.unmarshal(document.toString(), KubernetesResource.class);
        if (!(read instanceof HasMetadata object) || read instanceof GenericKubernetesResource) {
            throw new IllegalArgumentException(
                    "there is no kind %s in %s".formatted(document.path("kind"), document.path("apiVersion")));
        }
        refuseUnknown(object, "");
        return object;
    }

    /** The model keeps a field that it does not know under "additional properties", at any depth. */
    private static void refuseUnknown(Object value, String at) {
        if (value instanceof List<?> items) {
            for (int i = 0; i < items.size(); i++) {
                refuseUnknown(items.get(i), at + "/" + i);
            }
        } else if (value instanceof Map<?, ?> entries) {
            entries.forEach((key, entry) -> refuseUnknown(entry, at + "/" + key));
        } else if (value instanceof Quantity quantity) {
            refuseNoAmount(quantity, at);
        } else if (value != null && value.getClass().getName().startsWith("io.fabric8.")) {
            for (Class<?> type = value.getClass(); type != null; type = type.getSuperclass()) {
                for (Field field : type.getDeclaredFields()) {
                    refuseUnknown(value, field, at);
                }
            }
        }
    }

    private static void refuseNoAmount(Quantity quantity, String at) {
        try {
            Quantity.getAmountInBytes(quantity);
        } catch (RuntimeException e) {
            throw new IllegalArgumentException("%s at %s is no amount".formatted(quantity, at), e);
        }
    }

    private static void refuseUnknown(Object value, Field field, String at) {
        if (Modifier.isStatic(field.getModifiers())) {
            return;
        }
        try {
            field.setAccessible(true);
            Object inside = field.get(value);
            if (field.getName().equals("additionalProperties") && inside instanceof Map<?, ?> unknown) {
                if (!unknown.isEmpty()) {
                    throw new IllegalArgumentException("there is no field %s at %s".formatted(unknown.keySet(), at));
                }
            } else {
                refuseUnknown(inside, at + "/" + field.getName());
            }
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }
}
