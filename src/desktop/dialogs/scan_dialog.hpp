/// Receiving with a scanner in hand: the scan field keeps the focus, and each scan is answered.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/dialog.h>

#include "desk/form_drafts.hpp"
#include "desk/scan_tray.hpp"

class wxButton;
class wxSizer;
class wxStaticText;
class wxTextCtrl;

namespace sparewell::desktop {

class TableView;
class WrappedLabel;

class ScanDialog : public wxDialog {
 public:
  /// Books a delivery in the clinic file.
  using Book = std::function<Expected<desk::ReceivingOutcome>(const desk::ReceivingRequest&)>;

  /// `title` says of which order. What is scanned and not booked is kept beside `clinic_file`, and
  /// is in the tray when the same is received the next time.
  ScanDialog(wxWindow* parent, const std::string& title, desk::ScanTray tray,
             const std::filesystem::path& clinic_file, Book book);
  /// What was booked, a sentence a line; empty when nothing was.
  [[nodiscard]] const std::vector<std::string>& booked() const { return booked_; }
  /// How many scans were left unbooked.
  [[nodiscard]] std::size_t unbooked() const { return tray_.texts().size(); }
  /// The delivery is rather to be filled in by hand.
  [[nodiscard]] bool by_hand() const { return by_hand_; }

 private:
  void make_controls();
  wxSizer* make_buttons();
  void scan();
  void answer(const desk::ScanAnswer& answer);
  void show_tray();
  void book();
  void keep() const;
  void bring_back();

  desk::ScanTray tray_;
  desk::FormDrafts drafts_;
  Book book_;
  desk::Table table_;
  std::vector<std::string> booked_;
  bool by_hand_ = false;
  wxTextCtrl* scan_ = nullptr;
  wxTextCtrl* answer_ = nullptr;
  TableView* rows_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  wxButton* undo_ = nullptr;
  wxButton* discard_ = nullptr;
  wxButton* go_ = nullptr;
};

}  // namespace sparewell::desktop
