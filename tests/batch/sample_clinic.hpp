/// The sample clinic in a scratch folder, worked on by the program that users run.
#pragma once

#include "batch/run_batch.hpp"

inline const std::string sample = SPAREWELL_SOURCE_DIR "/sample-data/clinic";
inline const std::string today = "2026-11-25";

struct SampleClinic {
  ScratchFolder folder;
  std::string db = (folder / "clinic.db").string();
  Ran imported = run_batch({"--db", db, "--today", today, "--json", "import", sample, "--rejects",
                            (folder / "rejects").string()});

  /// With --json.
  [[nodiscard]] Ran run(std::vector<std::string> words) const {
    words.insert(words.begin(), "--json");
    return tell(std::move(words));
  }
  /// In words.
  [[nodiscard]] Ran tell(std::vector<std::string> words) const {
    words.insert(words.begin(), {"--db", db, "--today", today});
    return run_batch(words);
  }
};
