/// What an import of a folder would do, without doing it.
#pragma once

#include <string>
#include <vector>

#include "desk/clinic_jobs.hpp"

namespace sparewell::desk {

struct ImportTrial {
  ImportReport report;               ///< as if it had been imported; no rejects are written
  std::vector<std::string> missing;  ///< what the clinic file would still lack, and what for
};

/// Imports into a copy in memory; neither the clinic file nor the folder is written to. A path
/// without a clinic file stands for an empty one. Throws as import_folder.
[[nodiscard]] ImportTrial try_folder(const ClinicFile& file, const std::filesystem::path& folder,
                                     const exchange::FolderFormat& format,
                                     const JobControl& control);

/// One sentence for each kind of record of which there is none.
[[nodiscard]] std::vector<std::string> missing_records(const Clinic& clinic);

/// import_folder that writes no file of refused rows.
[[nodiscard]] ImportReport import_without_rejects(store::Store& store,
                                                  const std::filesystem::path& folder,
                                                  const store::Author& author,
                                                  const ImportOptions& options);

/// "If this folder were imported: 12 rows added ...", and what would be missing.
[[nodiscard]] std::string trial_summary(const ImportTrial& trial);

}  // namespace sparewell::desk
