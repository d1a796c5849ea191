/// Receiving at the bench: scan, look, book, and go on with the next package.
#pragma once

#include <functional>
#include <vector>

#include "desk/receive_form.hpp"
#include "desktop/dialogs/asking_form.hpp"

class wxCheckBox;

namespace sparewell::desktop {

class ReceiveDialog : public AskingForm {
 public:
  /// Books a delivery in the clinic file.
  using Book = std::function<Expected<desk::ReceivingOutcome>(const desk::ReceivingRequest&)>;

  ReceiveDialog(wxWindow* parent, desk::ReceiveForm form, const std::vector<Item>& catalogue,
                Date today, const std::filesystem::path& clinic_file, Book book);
  /// What was booked, a sentence a line; empty when nothing was.
  [[nodiscard]] const std::vector<std::string>& booked() const { return booked_; }

 private:
  void make_fields(const desk::ReceiveForm& form);
  void make_checks();
  [[nodiscard]] desk::ReceiveForm form() const;
  void fill(const desk::ReceiveForm& form);
  void scan();
  std::string book(const Book& book);

  const std::vector<Item>& catalogue_;
  Date today_;
  std::string supplier_;
  std::vector<std::string> booked_;
  wxTextCtrl* scan_ = nullptr;
  wxTextCtrl* order_ = nullptr;
  wxTextCtrl* item_ = nullptr;
  wxTextCtrl* lot_ = nullptr;
  wxTextCtrl* use_by_ = nullptr;
  wxTextCtrl* serials_ = nullptr;
  wxTextCtrl* quantity_ = nullptr;
  wxTextCtrl* damaged_ = nullptr;
  wxTextCtrl* damage_ = nullptr;
  wxTextCtrl* damaged_serials_ = nullptr;
  wxTextCtrl* place_ = nullptr;
  wxCheckBox* not_replaced_ = nullptr;
  wxCheckBox* extra_ = nullptr;
  wxCheckBox* undated_ = nullptr;
  wxCheckBox* known_serial_ = nullptr;
};

}  // namespace sparewell::desktop
