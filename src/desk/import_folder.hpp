/// Brings a folder of the clinic's CSV files into the database.
#pragma once

#include <filesystem>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "exchange/folder_format.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct RefusedRow {
  std::string file;
  int line = 0;        ///< 1 is the header; a quoted line break counts
  std::string column;  ///< "" when the row as a whole is meant
  std::string reason;  ///< what is wrong and what to do
};

struct FileReport {
  std::string file;
  int rows = 0;
  int added = 0;
  int changed = 0;
  int unchanged = 0;
  int refused = 0;
  std::string refusal;             ///< one sentence when the whole file was refused, else ""
  std::vector<std::string> notes;  ///< unknown columns, suppliers made on the way ...
};

struct ImportReport {
  std::vector<FileReport> files;  ///< only files that were there
  std::vector<RefusedRow> refused;
  std::filesystem::path rejects_folder;  ///< "" when nothing was refused or written
  std::vector<std::string> notes;        ///< unknown files in the folder, and the like
  bool cancelled = false;

  /// True when every row of every file was taken.
  [[nodiscard]] bool clean() const;
};

struct ImportProgress {
  std::string file;
  double done = 0;  ///< of the whole import, 0 to 1
};

struct ImportOptions {
  exchange::FolderFormat format;
  Date today;  ///< the day that a stock count is recorded on
  /// Where refused rows are written; "" for a folder "rejects" inside the imported one. A folder
  /// with other content is left alone: "rejects-2" and so on is taken then.
  std::filesystem::path rejects_folder;
  std::function<void(const ImportProgress&)> progress;  ///< called at most ten times a second
  std::stop_token stop;  ///< when asked, the file at hand is undone and the import ends
};

/// One transaction a file, in the order that references need. Importing the same folder again
/// changes nothing, and writes nothing to the change log. A column that a file lacks leaves what is
/// stored; a blank cell clears it. Refused rows are written as files of the same name that can be
/// corrected and imported as a folder. Throws store::StoreFailure when the database fails,
/// std::runtime_error when the folder is not there.
[[nodiscard]] ImportReport import_folder(store::Store& store, const std::filesystem::path& folder,
                                         const store::Author& author, const ImportOptions& options);

}  // namespace sparewell::desk
