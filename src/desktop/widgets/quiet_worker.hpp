/// A thread of its own for short work that the status bar does not tell of.
#pragma once

#include <memory>

#include <wx/app.h>

#include "desk/job.hpp"

namespace sparewell::desktop {

inline std::unique_ptr<desk::Worker> quiet_worker() {
  return std::make_unique<desk::BackgroundWorker>(
      [](std::function<void()> call) { wxTheApp->CallAfter(call); },
      [](const desk::JobProgress&) {});
}

}  // namespace sparewell::desktop
