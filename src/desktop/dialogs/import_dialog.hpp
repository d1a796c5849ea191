/// Asks for the folder to import and how its files are written.
#pragma once

#include <optional>

#include "desktop/dialogs/form.hpp"
#include "exchange/folder_format.hpp"

namespace sparewell::desktop {

class ImportDialog : public Form {
 public:
  ImportDialog(wxWindow* parent, const std::string& folder);

  [[nodiscard]] std::string folder() const;
  [[nodiscard]] exchange::FolderFormat format() const { return format_; }

 private:
  /// Keeps the dialog open, and says why, when what was entered cannot be used.
  void on_ok(wxCommandEvent& event);

  wxDirPickerCtrl* folder_ = nullptr;
  wxChoice* separator_ = nullptr;
  wxChoice* decimal_ = nullptr;
  wxTextCtrl* dates_ = nullptr;
  exchange::FolderFormat format_;
};

}  // namespace sparewell::desktop
