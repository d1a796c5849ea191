/// Asks for the folder to import and how its files are written.
#pragma once

#include <optional>

#include "desktop/dialogs/form.hpp"
#include "exchange/folder_format.hpp"

namespace sparewell::desktop {

class ImportDialog : public Form {
 public:
  /// What ShowModal gives when the import is to be tried before.
  static constexpr int try_first = wxID_PREVIEW;

  ImportDialog(wxWindow* parent, const std::string& folder);

  [[nodiscard]] std::string folder() const;
  [[nodiscard]] exchange::FolderFormat format() const { return format_; }

 private:
  /// Keeps the dialog open, and says why, when what was entered cannot be used.
  void on_ok(wxCommandEvent& event);
  /// False, with the reason said, where something is missing.
  bool read_format();

  wxDirPickerCtrl* folder_ = nullptr;
  wxChoice* separator_ = nullptr;
  wxChoice* decimal_ = nullptr;
  wxTextCtrl* dates_ = nullptr;
  exchange::FolderFormat format_;
};

}  // namespace sparewell::desktop
