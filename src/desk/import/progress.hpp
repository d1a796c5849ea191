/// Tells how far an import has come, at most ten times a second, and whether it shall stop.
#pragma once

#include <chrono>
#include <string>

#include "desk/import_folder.hpp"

namespace sparewell::desk {

class Progress {
 public:
  Progress(const ImportOptions& options, double total_bytes)
      : options_{options}, total_{total_bytes > 0 ? total_bytes : 1} {}

  void begin(std::string file, double bytes) {
    before_ += file_bytes_;
    file_ = std::move(file);
    file_bytes_ = bytes;
    tell(0);
  }
  /// Returns false when the import shall stop. `done` is the share of the file, 0 to 1.
  [[nodiscard]] bool go_on(double done) {
    if (++calls_ % 256 == 0) tell(done);
    return !options_.stop.stop_requested();
  }

 private:
  void tell(double done) {
    using namespace std::chrono;
    if (!options_.progress) return;
    const auto now = steady_clock::now();
    if (told_ && now - last_ < milliseconds{100}) return;
    told_ = true;
    last_ = now;
    options_.progress({file_, (before_ + done * file_bytes_) / total_});
  }

  const ImportOptions& options_;
  double total_;
  double before_ = 0;
  std::string file_;
  double file_bytes_ = 0;
  unsigned calls_ = 0;
  bool told_ = false;
  std::chrono::steady_clock::time_point last_;
};

}  // namespace sparewell::desk
