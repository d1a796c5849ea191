/// The parts of a workbook, which is a zip file, with a limit on what they unfold to.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include <zip.h>

#include "clinic/refusal.hpp"

namespace sparewell::exchange {

class ZipParts {
 public:
  /// `bytes` must outlive it. Refuses what is no zip file, or one with very many entries, in a
  /// sentence that begins with `name`.
  [[nodiscard]] static Expected<ZipParts> open(const std::string& name, const std::string& bytes,
                                               std::size_t part_bytes);

  /// The part's bytes; empty when there is no such part. Refuses one that is encrypted, damaged or
  /// too large.
  [[nodiscard]] Expected<std::optional<std::string>> read(const std::string& part) const;

 private:
  struct Discard {
    void operator()(zip_t* archive) const { zip_discard(archive); }
  };

  std::string name_;
  std::size_t part_bytes_ = 0;
  std::unique_ptr<zip_t, Discard> archive_;
};

}  // namespace sparewell::exchange
