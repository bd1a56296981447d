package parfield.web.bench;

import java.util.Objects;
import parfield.fit.LightModel;
import parfield.workspace.Result;

/**
 * A light model that is kept.
 *
 * @param model the model
 * @param result as it is stored: when, by whom, of which inputs
 * @param current whether a fit of today's setup and readings would have the same inputs
 */
public record StoredModel(LightModel model, Result result, boolean current) {
  public StoredModel {
    Objects.requireNonNull(model, "model");
    Objects.requireNonNull(result, "result");
  }
}
