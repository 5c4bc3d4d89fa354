#pragma once

#include <QElapsedTimer>
#include <QMainWindow>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "app/gui/candidate_list.h"
#include "app/gui/look.h"
#include "app/gui/sitting.h"
#include "app/gui/tones.h"
#include "app/gui/tray.h"

class QLabel;
class QPushButton;
class QSplitter;
class QVBoxLayout;

namespace gui {

class ArchivePane;
class FilingForm;
class HeadBar;
class HelpOverlay;
class MessageBar;
class PhotoView;
class StampView;
class ToReadList;
class TrayButtons;
class TypedPane;

// The window: the stamp at full width with its cells, one tray below it at a time, sentences and
// keys around. It shows what the sitting holds, passes on what the panes ask for, and is the edge
// at which troubles become sentences.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(SittingOptions options, QWidget* parent = nullptr);
    ~MainWindow() override;

    Sitting& sitting() { return *sitting_; }
    void openPhotos(const std::vector<std::filesystem::path>& files);
    // Opens where one was when the last window ended, however that was.
    void restoreTable();
    // Asks, within the window, whether to take up what an earlier sitting left unfiled.
    void offerDrafts();
    void setLight(Light light);

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    void buildFoot(QVBoxLayout* layout);
    void addTrayPages();
    void connectSitting();
    void connectPanes();
    void connectPhotoView();
    void connectSession();
    void connectPanesToSitting();
    void addKeys();
    void addTrayKeys();
    void addLookingKeys();
    void addPhotoKeys();
    void addStampKeys();
    void addMeaningKeys();
    void addKey(const QKeySequence& keys, const std::function<void()>& action);
    void guarded(const std::function<void()>& action);

    void actionDone();
    void showSession();
    QString emptyWords() const;
    QString differenceWords(const models::Cell& cell) const;
    void showStamp();
    void showLetters();
    void showPlace();
    void showOutlines();
    void showCandidates();
    void showFields();
    void showEvidence();
    void showFound(const QString& item_id, const std::vector<models::PartDating>* parts = nullptr);
    void showFold();
    QString lettersHints() const;
    void showHints();
    int photoMeant() const;
    void pickLayer(int layer);
    void wantLayer(int layer);  // says so where the stamp has no such layer
    void setAsTyped(bool as_typed);
    void tellNothingConfirmed();
    std::string layerName() const;

    void toggleTray(TrayPage page);
    void trayChanged();
    void openMeaning();
    void holdPhoto();
    void turnTones(const Tones& tones);
    void conclude(Conclusion conclusion);
    void restoreLetters();
    void keepChoices();
    void keepWindowState();
    void returnToTray(const WindowState& state);
    void countUnfiled();
    void showAhead(int read, int all);
    bool mayShowCandidates() const;
    void lettersGoneThrough();
    void escape();
    void undo(bool again);
    void chooseFiles();
    bool file();         // whether the record is filed now
    void fileAndGoOn();  // confirms the rest first, then to the next photo
    void deleteOtherOutlines();
    void search(const models::FindQuery& query);
    void openFound(const QString& id);
    bool isFiledOutline(int stamp);  // says so when it is
    void deleteOutline(int stamp);
    void moveOutline(int stamp, const vision::Quad& corners, int gesture);

    std::unique_ptr<Sitting> sitting_;
    std::unique_ptr<QObject> session_listener_;  // its end ends the connections to a session
    HeadBar* head_;
    MessageBar* message_;
    StampView* stamp_view_;
    QLabel* cell_line_;
    QLabel* letter_case_;
    QPushButton* fold_;  // the edge of what stays folded until the letters are gone through
    QSplitter* splitter_;
    Tray* tray_;
    CandidateList* candidates_;
    PhotoView* photo_view_;
    ToReadList* to_read_;
    ArchivePane* archive_pane_;
    FilingForm* filing_form_;
    TypedPane* typed_pane_;
    TrayButtons* tray_buttons_;
    QLabel* hints_;
    HelpOverlay* help_;
    int layer_ = 0;  // 0: the stamp's own colours; then its layers in their order
    Light light_ = Light::Day;
    bool closing_ = false;
    int shown_place_ = -1;                // of the photo that was shown last
    std::pair<int, CellPlace> shown_at_;  // its stamp and cell in hand
    bool as_typed_ = false;               // letters typed small stay small
    // While the key is held down that shows the photo as it is: the layer to come back to, since
    // when.
    std::optional<int> held_layer_;
    QElapsedTimer held_since_;
    Tones tones_;
    std::optional<WindowState> returning_;  // to be stood in again once the photo is read
};

}  // namespace gui
